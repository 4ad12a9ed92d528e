import { Card } from "@/components/ui/card";
import { Button } from "@/components/ui/plain-button";
import { type StartupKey, startupField } from "@/lib/domain/startup-walk";
import { heldFields } from "@/lib/offline/draft";
import { words } from "./entry-field";
import { JobFrame } from "./job-frame";
import type { Work } from "./use-job";
import { phone } from "./use-phone";
import type { Place } from "./use-place";

type Props = { readonly work: Work; readonly go: (place: Place) => void };

/** Entries that wait for the person: two values for one field, or one that cannot be right. */
export function NeedsYouScreen({ work, go }: Props) {
  const { job, draft, screens } = work;
  const held = heldFields(draft);
  return (
    <JobFrame work={work} go={go} title="These need you">
      {held.length === 0 ? <p role="status">Nothing waits for you.</p> : null}
      <ul className="grid gap-3">
        {held.map(([key, pending]) => {
          const field = startupField(key as StartupKey);
          const screen = screens.find((one) => (one.fields as readonly string[]).includes(key));
          return (
            <li key={key}>
              <Card title={field.label}>
                {pending.held?.why === "conflict" ? (
                  <div className="grid gap-2">
                    <p>Two people entered two values. Which one stands?</p>
                    <Button wide onClick={() => void phone().keepMine(job.id, key)}>
                      Yours: {words(field, pending.value)}
                    </Button>
                    <Button wide onClick={() => void phone().takeTheirs(job.id, key)}>
                      Theirs: {words(field, pending.held.theirs)}
                    </Button>
                  </div>
                ) : (
                  <div className="grid gap-2">
                    <p className="text-short">{pending.held?.message}</p>
                    <p>
                      You entered <strong>{words(field, pending.value)}</strong>; it is kept on this phone.
                    </p>
                    {screen ? (
                      <Button wide variant="primary" onClick={() => go({ job: job.id, at: screen.id })}>
                        Mend it
                      </Button>
                    ) : null}
                  </div>
                )}
              </Card>
            </li>
          );
        })}
      </ul>
    </JobFrame>
  );
}
