import { heldFields, type PendingField } from "./draft";
import type { Letter, Photo, SendState } from "./outbox";
import type { PhoneState } from "./phone-state";

type Holding = Pick<PhoneState, "drafts" | "photos" | "letters">;

/** What of one job goes nowhere until the person has looked at it. */
export type NeedsYou = {
  readonly fields: readonly (readonly [string, PendingField])[];
  readonly photos: readonly Refused<Photo>[];
  readonly letters: readonly Refused<Letter>[];
};

type Refused<T> = T & { readonly state: Extract<SendState, { readonly at: "refused" }> };

export function needsYou({ drafts, photos, letters }: Holding, jobId: string): NeedsYou {
  const draft = drafts[jobId];
  const isRefused = <T extends Photo | Letter>(one: T): one is Refused<T> =>
    one.jobId === jobId && one.state.at === "refused";
  return {
    fields: draft ? heldFields(draft) : [],
    photos: photos.filter(isRefused<Photo>),
    letters: letters.filter(isRefused<Letter>),
  };
}

/** The jobs with something that needs the person, and how much. */
export function jobsThatNeedYou(
  state: Holding,
): readonly { readonly jobId: string; readonly count: number }[] {
  const jobs = new Set([
    ...Object.keys(state.drafts),
    ...[...state.photos, ...state.letters].map((one) => one.jobId),
  ]);
  return [...jobs].flatMap((jobId) => {
    const { fields, photos, letters } = needsYou(state, jobId);
    const count = fields.length + photos.length + letters.length;
    return count === 0 ? [] : [{ jobId, count }];
  });
}
