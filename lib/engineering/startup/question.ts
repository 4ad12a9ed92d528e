import { isEngineeringError } from "../errors";
import type { ReadingName } from "./readings";
import type { StartupLimitValues } from "./stage-check";
import type { StartupSite, StartupStage } from "./startup-stage";

/** Something about the readings to ask the person who took them. It blocks nothing; it is never accepted in silence. */
export type SanityQuestion = {
  readonly id: string;
  readonly question: string;
  readonly fields: readonly ReadingName[];
};

/** What the questions of one stage look at. */
export type QuestionContext = {
  readonly stage: StartupStage;
  readonly cooling: boolean;
  /** The value of a reading; NaN when it is missing, so that every comparison with it is false. */
  readonly at: (name: ReadingName) => number;
  readonly site: StartupSite;
  readonly limits: StartupLimitValues;
};

/** One question when something is odd, none otherwise. */
export function ask(
  odd: boolean,
  id: string,
  question: string,
  fields: readonly ReadingName[],
): readonly SanityQuestion[] {
  return odd ? [{ id, question, fields }] : [];
}

/**
 * States that cannot be computed are asked about by the questions on single readings.
 *
 * @throws anything that is not a refusal of the engineering module.
 */
export function quietly(questions: () => readonly SanityQuestion[]): readonly SanityQuestion[] {
  try {
    return questions();
  } catch (error) {
    if (isEngineeringError(error)) return [];
    throw error;
  }
}
