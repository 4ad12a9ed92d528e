"use client";

import { Press } from "@/components/forms/press";
import type { Answer } from "@/components/forms/use-sent-form";

export type TryAgainAction = (input: unknown) => Promise<Answer>;
type Props = { readonly workId: string; readonly title: string; readonly tryAgain: TryAgainAction };

export function TryAgain({ workId, title, tryAgain }: Props) {
  return (
    <Press act={() => tryAgain({ workId })} label={`Try again: ${title}`}>
      Try again
    </Press>
  );
}
