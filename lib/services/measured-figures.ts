import { numberText } from "@/lib/charts/number-text";
import { isOfAbsentStage } from "@/lib/domain/absent-stage";
import type { Evaluation, JobContext } from "@/lib/domain/evaluate";
import type { LedgerLine } from "@/lib/domain/ledger";
import type { LimitKey } from "@/lib/domain/limits";
import { gallonsPerHour } from "@/lib/engineering/moisture";
import { type JudgedFigure, plainFigure } from "@/lib/reports/figures";
import type { MeasuredGroup } from "@/lib/reports/homeowner/view";
import type { HomeownerTexts } from "./homeowner-text-types";
import { startupTargets, stripOf } from "./packet-views/targets";
import { lineName, unitName } from "./printed-ledger";

type Aim = { readonly min: number | null; readonly max: number | null; readonly text: string };

/** The measured figures a homeowner may care for, each with its aim and a picture of both. */
export function measuredGroups(
  context: JobContext,
  evaluation: Evaluation,
  texts: HomeownerTexts,
): readonly MeasuredGroup[] {
  const lines = evaluation.ledger.filter(
    (line) => line.key in texts.plainWords && !isOfAbsentStage(context, line.key),
  );
  return [...new Set(lines.map((line) => line.group))].map((group) => ({
    heading: texts.groups[group] ?? group,
    figures: lines
      .filter((line) => line.group === group)
      .flatMap((line) => figuresOf(line, aimOf(line, context, evaluation, texts), texts)),
  }));
}

function figuresOf(line: LedgerLine, aim: Aim | null, texts: HomeownerTexts): readonly JudgedFigure[] {
  const { measured } = line.cells;
  const value = typeof measured.value === "number" ? measured.value : null;
  const { uncertainty } = measured;
  const figure: JudgedFigure = {
    label: lineName(line, texts),
    value: value === null ? null : numberText(value, line.decimals),
    unit: unitName(line.unit, texts),
    ...(uncertainty === null ? {} : { uncertainty: numberText(uncertainty, line.decimals) }),
    verdict: value === null ? "not measured" : measured.verdict,
    aim: aim?.text ?? null,
    plainWords: texts.plainWords[line.key] ?? null,
    strip: aim === null ? null : stripOf(aim, value, around(value, uncertainty)),
  };
  if (line.key !== "moisture" || value === null) return [figure];
  return [figure, plainFigure(texts.inGallons, numberText(gallonsPerHour(value), 2), "gal/h")];
}

function around(value: number | null, uncertainty: number | null) {
  const middle = value ?? 0;
  return { low: middle - (uncertainty ?? 0), high: middle + (uncertainty ?? 0) };
}

/** What the finding on a line holds the reading against; where there is none, what design or fan table say. */
function aimOf(
  line: LedgerLine,
  context: JobContext,
  evaluation: Evaluation,
  texts: HomeownerTexts,
): Aim | null {
  const say = (value: number) => `${numberText(value, line.decimals)} ${unitName(line.unit, texts)}`.trim();
  const target = startupTargets(context, evaluation.results).find((one) => one.key === line.key);
  if (target !== undefined && target.min !== null && target.max !== null) {
    const { min, max } = target;
    return { min, max, text: texts.between(numberText(min, line.decimals), say(max)) };
  }
  const least = leastExpected(line.key, context, evaluation);
  if (least !== null) return { min: least, max: null, text: texts.atLeast(say(least)) };
  const { designed, set } = line.cells;
  if (typeof designed.value === "number") return point(designed.value, texts.design(say(designed.value)));
  return typeof set.value === "number" ? point(set.value, texts.fanTable(say(set.value))) : null;
}

const point = (value: number, text: string): Aim => ({ min: value, max: value, text });

const SHARES: Readonly<Record<string, { readonly rule: string; readonly limit: LimitKey }>> = {
  total: { rule: "startup.total-capacity", limit: "startup.totalShareMin" },
  sensible: { rule: "startup.sensible-capacity", limit: "startup.sensibleShareMin" },
  moisture: { rule: "startup.moisture-removal", limit: "startup.moistureShareMin" },
};

/** The least that the finding on a capacity asks for: its share of what is expected at the conditions of the day. */
function leastExpected(key: string, { limits }: JobContext, { findings }: Evaluation): number | null {
  const share = SHARES[key];
  if (share === undefined) return null;
  const finding = findings.startup_record.find(
    (one) => one.ruleId === share.rule && one.inputs.some((input) => input.startsWith("second")),
  );
  const expected = finding?.figures.find((figure) => figure.label === "Expected")?.value;
  return expected === undefined ? null : expected * limits[share.limit];
}
