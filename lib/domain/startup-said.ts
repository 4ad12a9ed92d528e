import type { Finding } from "@/lib/engineering/findings";
import type { Evaluation } from "./evaluate";
import type { PlainValue } from "./merge-fields";
import { stageOfKey, type WalkScreen } from "./startup-walk";

/** What the readings of one screen say, worst first, and whether one looks like a slip. */
export type Said = {
  readonly findings: readonly Finding[];
  readonly asked: readonly { readonly id: string; readonly question: string }[];
};

const WORST_FIRST = ["falls short", "can't tell", "meets", null] as const;
export const NOTHING_SAID: Said = { findings: [], asked: [] };

/** What one screen's readings say, as far as it can be said: what is missing is not repeated on every screen. */
export function saidOf(
  { findings, questions }: Pick<Evaluation, "findings" | "questions">,
  screen: WalkScreen,
  values: Readonly<Record<string, PlainValue>>,
): Said {
  if (!screen.fields.some((key) => (values[key] ?? null) !== null)) return NOTHING_SAID;
  const own = new Set<string>(screen.fields);
  const said = findings.startup_record.filter((one) => one.inputs.some((input) => own.has(input)));
  return {
    findings: WORST_FIRST.flatMap((verdict) => said.filter((one) => one.verdict === verdict)),
    asked: questions.filter(
      (one) => isOfStage(one.id, screen) && one.fields.some((field) => isAbout(field, screen)),
    ),
  };
}

/** A question of one stage is not asked beside the other stage's readings. */
function isOfStage(questionId: string, { fields }: WalkScreen): boolean {
  return fields.every((key) => {
    const stage = stageOfKey(key);
    return stage === null || questionId.startsWith(`${stage}.`);
  });
}

/** `supplyDryBulbF` and the like are about the fields that end alike. */
function isAbout(reading: string, { fields }: WalkScreen): boolean {
  const tail = reading
    .replace("DryBulbF", "DbF")
    .replace("WetBulbF", "WbF")
    .replace("RelativeHumidityPct", "RhPct")
    .toLowerCase();
  return fields.some((key) => key.toLowerCase().endsWith(tail));
}
