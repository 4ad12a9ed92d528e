"use client";

import { Press } from "@/components/forms/press";
import type { Answer } from "@/components/forms/use-sent-form";
import { type JobFile, WISH_DAYS } from "@/lib/domain/field-bundle";
import { contactText } from "./progress-words";

/** A picture, and whether the phone it was taken with can be asked for the camera's own. */
export type AskablePhoto = JobFile & {
  readonly taker: {
    readonly isHere: boolean;
    readonly isOnJob: boolean;
    readonly lastContact: string | null;
  };
};

type Props = {
  readonly jobId: string;
  readonly photo: AskablePhoto;
  readonly timeZone: string;
  readonly ask: (input: unknown) => Promise<Answer>;
  readonly withdraw: (input: unknown) => Promise<Answer>;
};

/** The camera's own picture: asked for and of whom, here, or why it cannot come. */
export function AskOriginal({ jobId, photo, timeZone, ask, withdraw }: Props) {
  const who = whoHasIt(photo, timeZone);
  const at = (time: string | null) => contactText(time, timeZone);
  const named = { jobId, photoId: photo.id };
  const quiet = { variant: "quiet" } as const;
  switch (photo.original) {
    case "asked":
      return (
        <div className="grid gap-1 text-xs">
          <p>
            Original asked for {at(photo.originalAskedAt)}. {who}
          </p>
          <Press {...quiet} act={() => withdraw(named)} busyText="Withdrawing…">
            Withdraw
          </Press>
        </div>
      );
    case "ended":
      return (
        <div className="grid gap-1 text-xs">
          <p>
            Original asked for {at(photo.originalAskedAt)}; nothing came in {WISH_DAYS} days, so it is no
            longer waited for. {who}
          </p>
          <Press {...quiet} act={() => ask(named)} busyText="Asking…">
            Ask again
          </Press>
        </div>
      );
    case "received":
      return (
        <p className="text-xs">
          Original received:{" "}
          <a className="underline" href={`/api/jobs/${jobId}/photos/${photo.id}?size=camera`}>
            open it
          </a>
        </p>
      );
    case "gone":
      return <p className="text-xs">The original is no longer on the phone.</p>;
    case "too large":
      return <p className="text-xs">The original is larger than 20 MB and stays on the phone.</p>;
    case null:
      if (!photo.taker.isHere || !photo.taker.isOnJob) return <p className="text-xs">{who}</p>;
      return (
        <Press {...quiet} act={() => ask(named)} busyText="Asking…">
          Ask for the original
        </Press>
      );
  }
}

/** On whose phone it is, and whether that phone will hear of it. */
function whoHasIt({ taker, addedByName }: AskablePhoto, timeZone: string): string {
  if (!taker.isHere)
    return `${addedByName} does not work here any more; the original cannot come from that phone.`;
  if (!taker.isOnJob)
    return `${addedByName} is not on this job any more, so that phone does not hear of it. Assign the job again to ask for the original.`;
  return taker.lastContact === null
    ? `It is on the phone of ${addedByName}, which has not been in contact yet.`
    : `It is on the phone of ${addedByName}, last in contact ${contactText(taker.lastContact, timeZone)}; it hears of it with its next.`;
}
