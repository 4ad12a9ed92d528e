import { stageOfKey, type WalkScreen } from "@/lib/domain/startup-walk";
import type { Finding } from "@/lib/engineering/findings";
import { useEvaluation } from "./use-evaluation";
import type { Work } from "./use-job";

type Question = { readonly id: string; readonly question: string };

/** What the readings of one screen say, and whether one looks like a slip. */
export type Said = { readonly findings: readonly Finding[]; readonly asked: readonly Question[] };

const WORST_FIRST = ["falls short", "can't tell", "meets", null] as const;
const NOTHING: Said = { findings: [], asked: [] };

/** What this screen's readings say at once, worst first, as far as it can be said. What is missing is not repeated on every screen. */
export function useSaid({ context, values }: Work, screen: WalkScreen): Said {
  const evaluation = useEvaluation(context);
  const isGiven = screen.fields.some((key) => (values[key] ?? null) !== null);
  if (evaluation === null || !isGiven) return NOTHING;
  const own = new Set<string>(screen.fields);
  const said = evaluation.findings.startup_record.filter((one) => one.inputs.some((input) => own.has(input)));
  return {
    findings: WORST_FIRST.flatMap((verdict) => said.filter((one) => one.verdict === verdict)),
    asked: evaluation.questions.filter(
      (one) => isOfStage(one.id, screen) && one.fields.some((field) => isAbout(field, screen)),
    ),
  };
}

/** A question of one stage is not asked beside the other stage's readings. */
function isOfStage(questionId: string, screen: WalkScreen): boolean {
  return screen.fields.every((key) => {
    const stage = stageOfKey(key);
    return stage === null || questionId.startsWith(`${stage}.`);
  });
}

/** `supplyDryBulbF` and the like are about the fields that end alike. */
function isAbout(reading: string, screen: WalkScreen): boolean {
  const tail = reading
    .replace("DryBulbF", "DbF")
    .replace("WetBulbF", "WbF")
    .replace("RelativeHumidityPct", "RhPct")
    .toLowerCase();
  return screen.fields.some((key) => key.toLowerCase().endsWith(tail));
}
