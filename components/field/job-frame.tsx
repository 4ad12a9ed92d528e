import type { ReactNode } from "react";
import { FieldFrame } from "./field-frame";
import { LinkState } from "./link-state";
import { Notices } from "./notices";
import type { Work } from "./use-job";
import type { Place } from "./use-place";

type Props = {
  readonly work: Work;
  readonly go: (place: Place) => void;
  readonly title: string;
  readonly lead?: ReactNode;
  readonly bottomBar?: ReactNode;
  readonly children: ReactNode;
};

/** A screen inside a job, with the way back to it. */
export function JobFrame({ work, go, title, lead, bottomBar, children }: Props) {
  const { job, state } = work;
  return (
    <FieldFrame
      accent={state.bundle?.accent ?? null}
      brand={state.bundle?.companyName ?? ""}
      title={title}
      lead={lead}
      back={{ label: job.customerName, go: () => go({ job: job.id, at: null }) }}
      sendState={<LinkState state={state} />}
      bottomBar={bottomBar}
    >
      <Notices state={state} go={go} />
      {children}
    </FieldFrame>
  );
}
