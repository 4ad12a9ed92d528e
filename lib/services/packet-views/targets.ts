import { numberText } from "@/lib/charts/number-text";
import { type JobContext, valueIfKnown } from "@/lib/domain/evaluate/context";
import type { JobResults } from "@/lib/domain/evaluate/results";
import type { RangeStrip } from "@/lib/reports/figures";

/** What a reading is aimed at: the limits its finding is judged by, in the reading's unit. */
export type Target = {
  /** Key of the ledger line, or a name of its own where the ledger has none. */
  readonly key: string;
  readonly label: string;
  readonly unit: string;
  readonly decimals: number;
  readonly aim: number | null;
  readonly min: number | null;
  readonly max: number | null;
  /** Where the aim comes from. */
  readonly from: string;
};

/** The targets of a startup, with the tolerances that its findings are judged by. */
export function startupTargets(
  { inputs, limits, model }: JobContext,
  results: JobResults,
): readonly Target[] {
  const startup = inputs.startup_record;
  const design = inputs.airflow_setup.designExternalStaticInWc;
  const maker = model?.data;
  const within = (aim: number | null, by: number) =>
    aim === null ? { aim, min: null, max: null } : { aim, min: aim - by, max: aim + by };
  const designCfm = valueIfKnown(results.designCfm);
  const staticBy = (limits["airflow.staticDesignPct"] / 100) * (design ?? 0);
  const subcooling = startup.targetSubcoolingF ?? maker?.targets.subcoolingF ?? null;
  const superheat = startup.targetSuperheatF ?? maker?.targets.superheatF ?? null;
  return [
    {
      key: "airflow-full",
      label: "Airflow, full capacity",
      unit: "cfm",
      decimals: 0,
      ...within(designCfm, (designCfm ?? 0) * (limits["airflow.goodPct"] / 100)),
      from: `design, within ${numberText(limits["airflow.goodPct"], 0)} %`,
    },
    {
      key: "static",
      label: "External static pressure",
      unit: "in. w.c.",
      decimals: 2,
      ...within(design, Math.max(staticBy, limits["airflow.staticDesignInWc"])),
      from: "design",
    },
    {
      key: "static-maximum",
      label: "External static, most",
      unit: "in. w.c.",
      decimals: 2,
      aim: null,
      min: null,
      max: maker?.limits.maxExternalStaticInWc ?? null,
      from: "maker’s maximum",
    },
    {
      key: "subcooling",
      label: "Subcooling",
      unit: "°F",
      decimals: 1,
      ...within(subcooling, limits["refrigerant.subcoolingTolerance"]),
      from: "maker’s target",
    },
    {
      key: "superheat",
      label: "Superheat",
      unit: "°F",
      decimals: 1,
      ...within(superheat, limits["refrigerant.superheatTolerance"]),
      from: "maker’s target",
    },
  ];
}

/** A target in words: `940 to 1,272 cfm (design 1,106)`. `null` while nothing is known. */
export function targetText({ aim, min, max, unit, decimals }: Target): string | null {
  const say = (value: number) => numberText(value, decimals);
  if (min !== null && max !== null) {
    return `${say(min)} to ${say(max)} ${unit}${aim === null ? "" : `, aim ${say(aim)}`}`;
  }
  if (min !== null) return `at least ${say(min)} ${unit}`;
  return max === null ? null : `at most ${say(max)} ${unit}`;
}

/** How much wider than band and reading the scale is, on each side. */
const ROOM = 0.35;

/** Where a reading lies against its target, on a scale that holds both. `null` when there is nothing to draw. */
export function stripOf(
  target: Pick<Target, "min" | "max">,
  value: number | null,
  span: { readonly low: number; readonly high: number },
): RangeStrip | null {
  const ends = [target.min, target.max].filter((end) => end !== null);
  if (value === null || ends.length === 0) return null;
  const low = Math.min(...ends, span.low);
  const high = Math.max(...ends, span.high);
  const room = (high === low ? Math.abs(high) || 1 : high - low) * ROOM;
  const from = low - room;
  const at = (position: number) => (100 * (position - from)) / (high - low + 2 * room);
  return {
    aimFrom: target.min === null ? 0 : at(target.min),
    aimTo: target.max === null ? 100 : at(target.max),
    at: at(value),
    low: at(span.low),
    high: at(span.high),
  };
}
