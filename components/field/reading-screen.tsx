import { useEffect, useRef } from "react";
import { Notice } from "@/components/ui/notice";
import { Button } from "@/components/ui/plain-button";
import { SafetyCaution } from "@/components/ui/safety-caution";
import { refusePhysics } from "@/lib/domain/stages/physics";
import { startupField, type WalkScreen } from "@/lib/domain/startup-walk";
import { CAUTIONS, cautionFor } from "./cautions";
import { EntryField } from "./entry-field";
import { InstrumentRow } from "./instrument-row";
import { JobFrame } from "./job-frame";
import { JumpList, screenTitle } from "./jump-list";
import { Questions } from "./questions";
import { ReadingFindings, ReadingVerdict } from "./reading-findings";
import { ReadingHelp } from "./reading-help";
import { TakePhoto } from "./take-photo";
import type { Work } from "./use-job";
import { phone } from "./use-phone";
import type { Place } from "./use-place";
import { useSaid } from "./use-said";

type Props = { readonly work: Work; readonly screen: WalkScreen; readonly go: (place: Place) => void };

/** One reading a screen. Everything entered is kept on the phone as it is typed. */
export function ReadingScreen({ work, screen, go }: Props) {
  const { job, screens, values, context } = work;
  const index = screens.indexOf(screen);
  const step = (by: number) => {
    void phone().send();
    const next = screens[index + by];
    go({ job: job.id, at: next ? next.id : by > 0 ? "settings" : null });
  };
  const main = useRef<HTMLDivElement>(null);
  useEffect(() => {
    main.current?.querySelector<HTMLElement>("input, select, button")?.focus({ preventScroll: true });
  }, []);
  const physics = refusePhysics("startup_record", context.inputs.startup_record).filter((one) =>
    (screen.fields as readonly string[]).includes(one.field),
  );
  const caution = cautionFor(screen, values);
  const said = useSaid(work, screen);
  return (
    <JobFrame
      work={work}
      go={go}
      title={screen.section}
      lead={
        <span className="-mb-2 flex items-center justify-between">
          <span>
            Screen {index + 1} of {screens.length}
          </span>
          <JumpList work={work} screen={screen} go={go} />
        </span>
      }
      bottomBar={
        // One row where the phone lies on its side.
        <div className="[@media(max-height:480px)]:flex [@media(max-height:480px)]:gap-4 [&>*]:flex-1">
          <ReadingVerdict {...said} />
          <div className="flex gap-2 [&>*]:flex-1">
            <Button onClick={() => step(-1)}>Back</Button>
            <Button variant="primary" onClick={() => step(1)}>
              Next
            </Button>
          </div>
        </div>
      }
    >
      {/* biome-ignore lint/a11y/noStaticElementInteractions: keys that also have buttons, for a keyboard in the van */}
      <div
        ref={main}
        className="grid gap-4"
        onKeyDown={(event) => {
          if (event.key === "PageDown") step(1);
          else if (event.key === "PageUp") step(-1);
          else if (event.key === "Enter" && event.target instanceof HTMLInputElement)
            step(event.shiftKey ? -1 : 1);
          else return;
          event.preventDefault();
        }}
      >
        {caution.length === 0 ? null : (
          <SafetyCaution>{caution.map((danger) => CAUTIONS[danger]).join(" ")}</SafetyCaution>
        )}
        {job.isSigned ? (
          <Notice kind="information" title="This record is signed">
            The office can reopen it with a reason.
          </Notice>
        ) : null}
        <Questions work={work} fields={screen.fields} />
        {screen.fields.map((key, at) => (
          <div key={key} className="grid gap-2">
            {at > 0 && screen.needs === "any" ? <p className="text-center text-sm text-muted">or</p> : null}
            <EntryField work={work} name={key} isFirst={at === 0} />
          </div>
        ))}
        {physics.map((problem) => (
          <Notice key={problem.message} kind="problem" title={problem.message}>
            {problem.field.endsWith("SupplyDbF") ? (
              <Button
                className="mt-2"
                onClick={() => void phone().enter(job.id, "supplyWarmerConfirmed", true)}
              >
                {startupField("supplyWarmerConfirmed").label}
              </Button>
            ) : null}
          </Notice>
        ))}
        {screen.instrument === null ? null : (
          <InstrumentRow work={work} screen={screen} name={screen.instrument} />
        )}
        <ReadingHelp work={work} screen={screen} />
        <ReadingFindings {...said} />
        {job.isSigned ? null : (
          <TakePhoto
            jobId={job.id}
            field={screen.fields[0] ?? null}
            caption={screen.section === "Nameplate" ? "Nameplate" : screenTitle(screen)}
            label={screen.section === "Nameplate" ? "Photo of the nameplate" : "Photo of this reading"}
            look="secondary"
          />
        )}
      </div>
    </JobFrame>
  );
}
