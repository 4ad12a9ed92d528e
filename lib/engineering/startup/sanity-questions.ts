import { airQuestions } from "./air-questions";
import { identicalToLastStage } from "./identical-readings";
import { plantQuestions } from "./plant-questions";
import type { QuestionContext, SanityQuestion } from "./question";
import type { StartupLimitValues } from "./stage-check";
import { requireSite, requireStage, type StartupSite, type StartupStage } from "./startup-stage";

/**
 * Questions about readings that are possible one by one but unlikely together.
 *
 * @param input.stage - The stage just read.
 * @param input.previous - The stage read before it; `null` for the first.
 * @param input.site - Elevation and refrigerant; checks that need a missing one are left out.
 * @param limits - The company's limits in force.
 * @returns Questions with the readings they are about, most basic first; empty when nothing is odd.
 * @throws {@link OutOfRangeError} naming a reading no instrument can show.
 * @see Second law and conservation of water and energy (physics); thresholds are company limits.
 */
export function sanityQuestions(
  input: {
    readonly stage: StartupStage;
    readonly previous: StartupStage | null;
    readonly site: StartupSite;
  },
  limits: StartupLimitValues,
): readonly SanityQuestion[] {
  const { stage, previous, site } = input;
  requireStage(stage, "");
  if (previous !== null) requireStage(previous, "previous.");
  requireSite(site);
  const context: QuestionContext = {
    stage,
    cooling: stage.mode === "cooling",
    at: (name) => stage.readings[name]?.value ?? Number.NaN,
    site,
    limits,
  };
  return [
    ...airQuestions(context),
    ...plantQuestions(context),
    ...(previous === null ? [] : identicalToLastStage(stage, previous)),
  ];
}
