"use client";

import { useRouter } from "next/navigation";
import { Press, type PressProps } from "@/components/forms/press";
import type { Kept } from "./kept";

type Props<T> = Omit<PressProps, "act"> & {
  readonly input: unknown;
  readonly send: (input: unknown) => Promise<Kept<T>>;
  /** Where to go afterwards; `{id}` is what the action answered. Stays when left out. */
  readonly to?: string;
};

/** A button that does one thing to the catalog, and leads on where there is more to do. */
export function CatalogPress<T>({ input, send, to, ...shown }: Props<T>) {
  const router = useRouter();
  const act = async () => {
    const answer = await send(input);
    if (answer.ok && to !== undefined) router.push(to.replace("{id}", String(answer.value)));
    if (answer.ok) router.refresh();
    return answer;
  };
  return <Press {...shown} act={act} />;
}
