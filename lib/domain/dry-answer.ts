import { equipmentRules } from "@/lib/engineering/equipment";
import type { Finding } from "@/lib/engineering/findings";
import { startupRules } from "@/lib/engineering/startup";
import type { Evaluation, JobContext } from "./evaluate";
import { hasTwoStages, type StartupKey } from "./startup-walk";

export type DryAnswer = {
  readonly answer: "yes" | "no" | "can't tell" | "not measured";
  readonly sentence: string;
  /** What speaks against it, each with what to do; the moisture removal first. */
  readonly against: readonly Finding[];
  /** What these readings leave open, each with what would settle it. */
  readonly open: readonly Finding[];
  /** Readings of the air without which nobody can say. */
  readonly unmeasured: readonly StartupKey[];
};

type Stage = "second" | "first";
const STAGE_NAMES: Readonly<Record<Stage, string>> = { second: "full capacity", first: "the first stage" };

/** Findings of the design that decide dryness, beside everything measured and every control setting. */
const DESIGN_RULES: ReadonlySet<string> = new Set([equipmentRules.humidityCapability.id]);

/**
 * The one question before leaving: will this house be dry? `yes` needs the moisture removal measured and met at every stage
 * the equipment has; anything binding that falls short makes it `no`; what was not measured is never taken for good.
 */
export function dryAnswer(context: JobContext, { findings }: Pick<Evaluation, "findings">): DryAnswer {
  const all = [
    ...findings.startup_record,
    ...findings.control_setup,
    ...findings.equipment_selection.filter((one) => DESIGN_RULES.has(one.ruleId)),
  ]
    .filter((one) => one.binding)
    .toSorted((one, other) => Number(isMoisture(other)) - Number(isMoisture(one)));
  const stages: readonly Stage[] = hasTwoStages(context) ? ["second", "first"] : ["second"];
  const removal = stages.map((stage) => ({
    stage,
    found: all.find((one) => isMoisture(one) && one.inputs.some((input) => input.startsWith(stage))) ?? null,
  }));
  const isKnown = (found: Finding | null) => found !== null && found.verdict !== "not measured";
  const against = all.filter((one) => one.verdict === "falls short");
  const rest = {
    against,
    open: all.filter(
      (one) =>
        one.verdict === "can't tell" || (isMoisture(one) && one.verdict === null) || isNotExpected(one),
    ),
    unmeasured: [
      ...new Set(removal.flatMap(({ stage, found }) => (isKnown(found) ? [] : missingAir(stage, context)))),
    ],
  };
  if (against.length > 0) {
    const titles = [...new Set(against.map(shortTitle))];
    const verb = titles.length === 1 ? "falls" : "fall";
    return { ...rest, answer: "no", sentence: `Not as it stands: ${listed(titles)} ${verb} short.` };
  }
  const unknown = removal.filter(({ found }) => !isKnown(found)).map(({ stage }) => STAGE_NAMES[stage]);
  if (unknown.length > 0) {
    const met = removal
      .filter(({ found }) => found?.verdict === "meets")
      .map(({ stage }) => STAGE_NAMES[stage]);
    const good = met.length === 0 ? "" : ` At ${met[0]} it takes out the water it should.`;
    const where = stages.length === 1 ? "" : ` at ${unknown.length === 2 ? "either stage" : unknown[0]}`;
    const why =
      rest.unmeasured.length === 0
        ? "what it should take out at these conditions is not known"
        : `the moisture removal has not been measured${where}`;
    return { ...rest, answer: "not measured", sentence: `Nobody can say: ${why}.${good}` };
  }
  if (removal.some(({ found }) => found?.verdict !== "meets")) {
    const sentence = "Can’t tell yet with these readings. What would settle it stands below.";
    return { ...rest, answer: "can't tell", sentence };
  }
  const both = stages.length === 1 ? "" : " at both stages";
  const sentence = `Yes, as far as these readings tell: it takes out the water it should${both}.`;
  return { ...rest, answer: "yes", sentence };
}

function isMoisture({ ruleId }: Finding): boolean {
  return ruleId === startupRules.moistureRemoval.id;
}

/** The readings are in, and what they are held against is missing: its next step says from whom. */
function isNotExpected(one: Finding): boolean {
  return isMoisture(one) && one.verdict === "not measured" && one.inputs.length === 0;
}

/** What the moisture removal of a stage is worked out from and is not entered. */
function missingAir(stage: Stage, { inputs }: JobContext): readonly StartupKey[] {
  const values = inputs.startup_record;
  const outdoors: readonly StartupKey[] = values.outdoorDbF === null ? ["outdoorDbF"] : [];
  const needs = [
    ["ReturnDbF"],
    ["ReturnWbF", "ReturnRhPct"],
    ["SupplyDbF"],
    ["SupplyWbF", "SupplyRhPct"],
    ["AirflowCfm"],
  ] as const;
  const air = needs.flatMap((anyOf): readonly StartupKey[] => {
    const keys = anyOf.map((name) => `${stage}${name}` as const);
    const [first] = keys;
    return first === undefined || keys.some((key) => values[key] !== null) ? [] : [first];
  });
  return [...outdoors, ...air];
}

/** What falls short, without what it was held against: that stands below. */
function shortTitle({ title }: Finding): string {
  const [what = title] = title.split(/ against | is | within | before | holds|, /);
  return what.charAt(0).toLowerCase() + what.slice(1);
}

/** Three names at most: more would be a paragraph. */
function listed(names: readonly string[]): string {
  if (names.length > 3) return `${names.slice(0, 2).join(", ")} and ${names.length - 2} more`;
  return names.length === 1 ? String(names[0]) : `${names.slice(0, -1).join(", ")} and ${names.at(-1)}`;
}
