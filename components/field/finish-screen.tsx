import { Card } from "@/components/ui/card";
import { SafetyCaution } from "@/components/ui/safety-caution";
import { screenState } from "@/lib/domain/startup-walk";
import { DryCard } from "./dry-card";
import { EntryField } from "./entry-field";
import { JobFrame } from "./job-frame";
import { Signature } from "./signature";
import type { Work } from "./use-job";
import type { Place } from "./use-place";

type Props = { readonly work: Work; readonly go: (place: Place) => void };

const WALK_THROUGH = [
  "customerShownName",
  "shownThermostat",
  "shownFan",
  "shownFilter",
  "shownDrain",
  "shownPower",
  "shownHumidity",
  "walkThroughDone",
] as const;

/** The last screen: will this house be dry, what is left to do, what the customer was shown, the signature. */
export function FinishScreen({ work, go }: Props) {
  const { screens, values } = work;
  const open = screens.filter((screen) => screenState(screen, values) !== "done");
  return (
    <JobFrame work={work} go={go} title="Before leaving">
      <div className="grid gap-5">
        <DryCard work={work} go={go} />
        {open.length === 0 ? null : (
          <p>
            {open.length} of {screens.length} screens are not complete.{" "}
            <button
              type="button"
              className="text-link min-h-11"
              onClick={() => go({ job: work.job.id, at: open[0]?.id ?? null })}
            >
              Go to the first
            </button>
          </p>
        )}
        <SafetyCaution>
          Panels closed, disconnect on, lock-outs off, gauges off and caps on, no tools left in the attic.
        </SafetyCaution>
        <Card title="Customer walk-through">
          <div className="grid gap-4">
            {WALK_THROUGH.map((key) => (
              <EntryField key={key} work={work} name={key} isFirst={false} />
            ))}
          </div>
        </Card>
        <Signature work={work} />
      </div>
    </JobFrame>
  );
}
