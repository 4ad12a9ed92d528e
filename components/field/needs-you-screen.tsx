import { Card } from "@/components/ui/card";
import { Button } from "@/components/ui/plain-button";
import { placeOfField, type StartupKey, startupField } from "@/lib/domain/startup-walk";
import { needsYou } from "@/lib/offline/needs-you";
import type { Letter } from "@/lib/offline/outbox";
import { words } from "./entry-field";
import { JobFrame } from "./job-frame";
import { PhotoCard } from "./photo-card";
import type { Work } from "./use-job";
import { phone } from "./use-phone";
import type { Place } from "./use-place";

type Props = { readonly work: Work; readonly go: (place: Place) => void };

const LETTER_WORDS = {
  answer: { title: "Your answer to the office", drop: "Throw the answer away" },
  signature: { title: "Your signature", drop: "Take the signature back" },
  "hand-over": { title: "Handed over", drop: "Throw it away" },
} as const satisfies Record<Letter["kind"], object>;

/** What waits for the person: two values for one field, one that cannot be right, or what the office did not take. */
export function NeedsYouScreen({ work, go }: Props) {
  const { job, state, screens } = work;
  const { fields, photos, letters } = needsYou(state, job.id);
  return (
    <JobFrame work={work} go={go} title="These need you">
      {fields.length + photos.length + letters.length === 0 ? (
        <p role="status">Nothing waits for you.</p>
      ) : null}
      <ul className="grid gap-3">
        {fields.map(([key, pending]) => {
          const field = startupField(key as StartupKey);
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
                    <p className="line-clamp-4">
                      You entered <strong>{words(field, pending.value)}</strong>; it is kept on this phone.
                    </p>
                    <Button
                      wide
                      variant="primary"
                      onClick={() => go({ job: job.id, at: placeOfField(key as StartupKey, screens) })}
                    >
                      Mend it
                    </Button>
                  </div>
                )}
              </Card>
            </li>
          );
        })}
        {letters.map(({ id, kind, text, state: { message } }) => (
          <li key={id}>
            <Card title={LETTER_WORDS[kind].title}>
              <p className="text-short">{message}</p>
              <p className="line-clamp-4">
                You wrote <strong>{text}</strong>; it is kept on this phone.
              </p>
              <div className="mt-2 grid gap-2">
                <Button wide onClick={() => void phone().sendAgain({ letter: id })}>
                  Send it again
                </Button>
                <Button wide variant="danger" onClick={() => void phone().dropLetter(id)}>
                  {LETTER_WORDS[kind].drop}
                </Button>
              </div>
            </Card>
          </li>
        ))}
        {photos.map((photo) => (
          <li key={photo.id}>
            <PhotoCard photo={photo} />
          </li>
        ))}
      </ul>
    </JobFrame>
  );
}
