import { setTimeout as pause } from "node:timers/promises";
import { type ActionAnswer, callAction } from "./http-client";

export type Writer = {
  /** Notes of saves that were acknowledged, in order. */
  readonly acknowledged: readonly string[];
  /** Saves whose answer was lost and that were sent again. */
  readonly resent: () => number;
  /** Lets the running save end, acknowledged, and starts no other. */
  readonly stop: () => Promise<void>;
  /** Ends at once, acknowledged or not. */
  readonly giveUp: () => void;
};

/**
 * Saves a job's load summary through the application, one save after another, each with a note of its own. One
 * whose answer is lost is sent again unchanged until it is acknowledged, as a form with a bad connection does.
 */
export function startWriter(at: {
  readonly address: string;
  readonly cookie: string;
  readonly jobId: string;
}): Writer {
  const acknowledged: string[] = [];
  let resent = 0;
  let stopped = false;
  let givenUp = false;
  const save = async (expectedVersion: number | null, note: string): Promise<ActionAnswer> => {
    for (;;) {
      try {
        return await callAction({
          ...at,
          page: `/jobs/${at.jobId}/load-summary`,
          file: "app/(office)/jobs/actions.ts",
          name: "saveDesign",
          input: { jobId: at.jobId, stage: "load_summary", expectedVersion, inputs: { notes: note } },
        }).then(refuseFailure);
      } catch (error) {
        if (givenUp || error instanceof Refused) throw error;
        resent += 1;
        await pause(50);
      }
    }
  };
  const work = (async () => {
    for (let count = 1; !stopped; count++) {
      const note = `note ${count}`;
      const answer = await save(count === 1 ? null : count - 1, note);
      const { version } = answer.value as { version: number };
      if (version !== count) throw new Error(`Save ${count} became version ${version}.`);
      acknowledged.push(note);
    }
  })();
  // Looked at when the writer is stopped; until then a failure must not end the process.
  work.catch(() => undefined);
  return {
    acknowledged,
    resent: () => resent,
    stop: () => {
      stopped = true;
      return work;
    },
    giveUp: () => {
      stopped = true;
      givenUp = true;
    },
  };
}

class Refused extends Error {}

/** A server whose database is away says so; that save is sent again. Any other refusal is a defect. */
function refuseFailure(answer: ActionAnswer): ActionAnswer {
  if (answer.ok) return answer;
  if (answer.code === "UNEXPECTED" || answer.code === "UNAVAILABLE") throw new Error(answer.code);
  throw new Refused(`${answer.code}: ${answer.message}`);
}
