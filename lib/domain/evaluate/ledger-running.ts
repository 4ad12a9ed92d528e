import type { StageKey } from "../stages/keys";
import { type Derived, type JobContext, type LogSummary, valueIfKnown } from "./context";
import { type CellDraft, type LineDraft, stageOf } from "./ledger-draft";
import { forecastLivedLine } from "./ledger-forecast";
import type { JobResults } from "./results";

/** Whether the charge is right. */
export function chargeLines(context: JobContext, results: JobResults): readonly LineDraft[] {
  const inputs = context.inputs.startup_record;
  const targets = context.model?.data.targets;
  const measured = stageOf(results, "second");
  const cell = (value: Derived<number> | undefined, field: string, rules: readonly string[]): CellDraft => ({
    value: value ? valueIfKnown(value) : null,
    at: ["startup_record", field],
    rules,
  });
  return [
    {
      key: "subcooling",
      group: "Charge",
      label: "Subcooling",
      unit: "°F",
      decimals: 1,
      designed: {
        value: inputs.targetSubcoolingF ?? targets?.subcoolingF ?? null,
        at: ["startup_record", "targetSubcoolingF"],
      },
      measured: cell(measured?.subcoolingF, "secondLiquidLineF", ["refrigerant.subcooling"]),
    },
    {
      key: "superheat",
      group: "Charge",
      label: "Superheat",
      unit: "°F",
      decimals: 1,
      designed: {
        value: inputs.targetSuperheatF ?? targets?.superheatF ?? null,
        at: ["startup_record", "targetSuperheatF"],
      },
      measured: cell(measured?.superheatF, "secondSuctionLineF", ["refrigerant.superheat"]),
    },
  ];
}

/** How it is told to run, and how it runs. */
export function controlLines(context: JobContext, results: JobResults): readonly LineDraft[] {
  const inputs = context.inputs.control_setup;
  const { limits, log } = context;
  const line = (key: string, label: string, unit: string, decimals: number) => ({
    key,
    group: "Controls",
    label,
    unit,
    decimals,
  });
  const at = (field: string) => ["control_setup", field] as const;
  return [
    {
      ...line("first-stage-offset", "First-stage start offset", "°F", 1),
      designed: {
        value: limits["controls.firstStageStartOffsetMinF"],
        note: `up to ${limits["controls.firstStageStartOffsetMaxF"]} °F`,
      },
      set: {
        value: inputs.firstStageStartOffsetF,
        at: at("firstStageStartOffsetF"),
        rules: ["controls.first-stage-start-offset"],
      },
    },
    {
      ...line("second-stage-offset", "Second-stage start offset", "°F", 1),
      set: {
        value: inputs.secondStageStartOffsetF,
        at: at("secondStageStartOffsetF"),
        rules: ["controls.second-stage-start-offset"],
      },
    },
    {
      ...line("run-length", "Compressor run", "min", 0),
      designed: { value: limits["controls.minimumCompressorRunMin"], note: "at least" },
      set: {
        value: inputs.minimumCompressorRunMin,
        note: "minimum set",
        at: at("minimumCompressorRunMin"),
        rules: ["controls.minimum-compressor-run"],
      },
      lived: {
        value: log?.medianRunMin ?? null,
        note: log?.medianRunMin ? "median run" : null,
        at: ["humidity_review", "logImportId"],
        rules: ["logs.short-runs"],
      },
    },
    {
      ...line("fan-run-on", "Fan run-on after cooling", "s", 0),
      designed: { value: limits["controls.fanRunOnMaxS"], note: "at most" },
      set: {
        value: inputs.fanRunOnAfterCoolingS,
        at: at("fanRunOnAfterCoolingS"),
        rules: ["controls.fan-run-on"],
      },
    },
    {
      ...line("fan-between-calls", "Fan between calls", "", 0),
      set: {
        value: inputs.fanBetweenCalls,
        at: at("fanBetweenCalls"),
        rules: ["controls.fan-between-calls"],
      },
      lived: {
        value: fanBetweenCallsLived(log),
        at: ["humidity_review", "logImportId"],
        rules: ["logs.fan-without-cooling"],
      },
    },
    {
      ...line("second-stage-share", "Second stage, share of cooling", "%", 0),
      set: {
        value: results.secondStageSharePct,
        note: results.secondStageSharePct === null ? null : "hot afternoon",
        at: at("secondStageStartOffsetF"),
      },
      lived: {
        value: log?.secondStageSharePct ?? null,
        at: ["humidity_review", "logImportId"],
        rules: ["logs.second-stage-share"],
      },
    },
  ];
}

function fanBetweenCallsLived(log: LogSummary | null): string | null {
  const running = log?.analysis?.running ?? null;
  if (running === null || running.fanOnlyHours === null || running.hours <= running.coolingHours) return null;
  return `${((100 * running.fanOnlyHours) / (running.hours - running.coolingHours)).toFixed(0)} % of the time without cooling`;
}

/** What it is all for. */
export function humidityLines(context: JobContext, results: JobResults): readonly LineDraft[] {
  const load = context.inputs.load_summary;
  const { log } = context;
  const line = (key: string, label: string, unit: string, decimals: number) => ({
    key,
    group: "Humidity",
    label,
    unit,
    decimals,
  });
  const at: readonly [StageKey, string] = ["humidity_review", "logImportId"];
  const pct = log && log.loggedHours > 0 ? (100 * log.dryHours) / log.loggedHours : null;
  const measured = stageOf(results, "second");
  return [
    {
      ...line("indoor-rh", "Indoor relative humidity", "%", 0),
      designed: { value: load.humidityLimitPct, note: "at most", at: ["load_summary", "humidityLimitPct"] },
      set: {
        value: results.lowestRhPct,
        note: results.lowestRhPct === null ? null : "lowest it can hold at design",
        at: ["equipment_selection", "capacitySetting"],
      },
      measured: {
        value: measured ? (valueIfKnown(measured.delivered)?.returnAir.relativeHumidityPct ?? null) : null,
        note: "at startup",
        at: ["startup_record", "secondReturnWbF"],
      },
      lived: { value: log?.meanRhPct ?? null, note: log ? "mean of the log" : null, at },
    },
    {
      ...line("dry-hours", "Dry-hours", "h", 0),
      lived: {
        value: log?.dryHours ?? null,
        note: pct === null ? null : `${pct.toFixed(1)} % of ${log?.loggedHours.toFixed(0)} h logged`,
        at,
        rules: ["review.dry-hours"],
      },
    },
    ...(context.lived === null ? [] : [forecastLivedLine(context.lived)]),
    {
      ...line("wet-spell", "Longest time above the limit", "h", 1),
      lived: { value: log?.longestWetSpellHours ?? null, at, rules: ["logs.wet-spell"] },
    },
    {
      ...line("share-50-60", "Time from 50 to 60 %", "%", 0),
      lived: { value: log?.share50To60Pct ?? null, at },
    },
  ];
}
