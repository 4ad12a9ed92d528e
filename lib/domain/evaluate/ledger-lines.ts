import type { Finding, Verdict } from "@/lib/engineering/findings";
import { waterFromLatent } from "@/lib/engineering/moisture/latent-water";
import { worstVerdict } from "../jobs";
import type { Column, LedgerCell, LedgerLine } from "../ledger";
import type { StageKey } from "../stages/keys";
import { type Derived, type JobContext, valueOf } from "./context";
import type { JobResults } from "./results";
import type { MeasuredStage } from "./startup";

type CellDraft = {
  readonly value: number | string | null;
  readonly uncertainty?: number | null;
  readonly note?: string | null;
  readonly at?: readonly [StageKey, string | null];
  /** Rules whose findings judge this cell. */
  readonly rules?: readonly string[];
};
type LineDraft = {
  readonly key: string;
  readonly group: string;
  readonly label: string;
  readonly unit: string;
  readonly decimals: number;
} & { readonly [C in Column]?: CellDraft };

/** The ledger of a job: what design needs, what it is set to give, what was measured, what the house shows. */
export function ledgerLines(context: JobContext, results: JobResults): readonly LedgerLine[] {
  const drafts = [
    ...capacityLines(context, results),
    ...airflowLines(context, results),
    ...chargeLines(context, results),
    ...controlLines(context, results),
    ...humidityLines(context, results),
  ];
  return drafts.map((draft) => toLine(draft, results.findings));
}

function capacityLines(context: JobContext, results: JobResults): readonly LineDraft[] {
  const load = context.inputs.load_summary;
  const full = valueOf(results.equipment.full);
  const measured = results.startup.stages.find((one) => one.key === "second");
  const delivered = measured ? valueOf(measured.delivered) : null;
  const sum =
    load.sensibleCoolingBtuh === null || load.latentCoolingBtuh === null
      ? null
      : load.sensibleCoolingBtuh + load.latentCoolingBtuh;
  const water =
    load.latentCoolingBtuh === null || load.indoorCoolingDbF === null
      ? null
      : waterFromLatent(load.latentCoolingBtuh, load.indoorCoolingDbF);
  const line = (key: string, label: string, unit: string, decimals: number) => ({
    key,
    group: "Capacity",
    label,
    unit,
    decimals,
  });
  const set = (value: number | undefined, rules: readonly string[] = []): CellDraft => ({
    value: value ?? null,
    at: ["equipment_selection", "capacitySetting"],
    rules,
  });
  const read = (
    value: { readonly value: number; readonly expandedUncertainty: number } | null | undefined,
    rules: readonly string[],
  ): CellDraft => ({
    value: value?.value ?? null,
    uncertainty: value?.expandedUncertainty ?? null,
    at: ["startup_record", "secondSupplyDbF"],
    rules,
  });
  return [
    {
      ...line("total", "Total cooling", "Btu/h", 0),
      designed: { value: sum, at: ["load_summary", "sensibleCoolingBtuh"] },
      set: set(full?.totalBtuh, ["equipment.total-capacity"]),
      measured: read(delivered?.totalBtuh, ["startup.total-capacity"]),
    },
    {
      ...line("sensible", "Sensible cooling", "Btu/h", 0),
      designed: { value: load.sensibleCoolingBtuh, at: ["load_summary", "sensibleCoolingBtuh"] },
      set: set(full?.sensibleBtuh, ["equipment.sensible-capacity"]),
      measured: read(delivered?.sensibleBtuh, ["startup.sensible-capacity"]),
    },
    {
      ...line("latent", "Latent cooling", "Btu/h", 0),
      designed: { value: load.latentCoolingBtuh, at: ["load_summary", "latentCoolingBtuh"] },
      set: set(full?.latentBtuh, ["equipment.latent-capacity"]),
      measured: read(delivered?.latentBtuh, []),
    },
    {
      ...line("sensible-ratio", "Sensible ratio", "", 2),
      designed: {
        value: sum === null || sum === 0 ? null : (load.sensibleCoolingBtuh ?? 0) / sum,
        at: ["load_summary", "latentCoolingBtuh"],
      },
      set: set(full?.sensibleRatio),
      measured: read(delivered?.sensibleRatio, []),
    },
    {
      ...line("moisture", "Moisture removal", "lb/h", 1),
      designed: { value: water, at: ["load_summary", "latentCoolingBtuh"] },
      set: set(full?.moistureLbPerH),
      measured: read(delivered?.moistureLbPerH, ["startup.moisture-removal"]),
    },
  ];
}

function airflowLines(context: JobContext, results: JobResults): readonly LineDraft[] {
  const inputs = context.inputs.airflow_setup;
  const second = valueOf(results.airflow.second);
  const first = valueOf(results.airflow.first);
  const [fullMeasured, firstMeasured] = [stageOf(results, "second"), stageOf(results, "first")];
  const maximum = context.model?.data.limits.maxExternalStaticInWc ?? null;
  const line = (key: string, label: string, unit: string, decimals: number) => ({
    key,
    group: "Airflow",
    label,
    unit,
    decimals,
  });
  const setting = (name: string | null) => (name === null ? null : `setting “${name}”`);
  return [
    {
      ...line("airflow-full", "Airflow, full capacity", "cfm", 0),
      designed: { value: valueOf(results.designCfm), at: ["airflow_setup", "secondStageAirflowSetting"] },
      set: {
        value: second?.airflowCfm ?? null,
        note: setting(inputs.secondStageAirflowSetting),
        at: ["airflow_setup", "secondStageAirflowSetting"],
        rules: ["airflow.measured-against-design"],
      },
      measured: {
        value: fullMeasured?.airflowCfm ?? null,
        at: ["startup_record", "secondAirflowCfm"],
        rules: ["airflow.measured-against-design"],
      },
    },
    {
      ...line("airflow-first", "Airflow, first stage", "cfm", 0),
      set: {
        value: first?.airflowCfm ?? null,
        note: setting(inputs.firstStageAirflowSetting),
        at: ["airflow_setup", "firstStageAirflowSetting"],
      },
      measured: { value: firstMeasured?.airflowCfm ?? null, at: ["startup_record", "firstAirflowCfm"] },
    },
    {
      ...line("cfm-per-ton", "Airflow per ton as set", "cfm/ton", 0),
      set: {
        value: results.cfmPerTon.set,
        at: ["airflow_setup", "secondStageAirflowSetting"],
        rules: ["airflow.cfm-per-ton"],
      },
      measured: { value: results.cfmPerTon.measured, at: ["startup_record", "secondAirflowCfm"] },
    },
    {
      ...line("static", "External static pressure", "in. w.c.", 2),
      designed: { value: inputs.designExternalStaticInWc, at: ["airflow_setup", "designExternalStaticInWc"] },
      set: {
        value: maximum,
        note: maximum === null ? null : "maker's maximum",
        at: ["equipment_selection", "equipmentModelId"],
      },
      measured: {
        value: fullMeasured?.externalStaticInWc ?? null,
        at: ["startup_record", "secondReturnStaticInWc"],
        rules: ["airflow.static-against-maximum", "airflow.static-against-design"],
      },
    },
    {
      ...line("leaving-dew-point", "Dew point leaving the coil", "°F", 1),
      set: {
        value: valueOf(results.equipment.full)?.leavingDewPointF ?? null,
        at: ["airflow_setup", "secondStageAirflowSetting"],
      },
      measured: {
        value: fullMeasured ? (valueOf(fullMeasured.delivered)?.supplyAir.dewPointF ?? null) : null,
        at: ["startup_record", "secondSupplyWbF"],
      },
    },
  ];
}

function chargeLines(context: JobContext, results: JobResults): readonly LineDraft[] {
  const inputs = context.inputs.startup_record;
  const targets = context.model?.data.targets;
  const measured = stageOf(results, "second");
  const cell = (value: Derived<number> | undefined, field: string, rules: readonly string[]): CellDraft => ({
    value: value ? valueOf(value) : null,
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

function controlLines(context: JobContext, results: JobResults): readonly LineDraft[] {
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
    },
    {
      ...line("second-stage-share", "Second stage, share of cooling", "%", 0),
      set: {
        value: results.secondStageSharePct,
        note: results.secondStageSharePct === null ? null : "hot afternoon",
        at: at("secondStageStartOffsetF"),
      },
      lived: { value: log?.secondStageSharePct ?? null, at: ["humidity_review", "logImportId"] },
    },
  ];
}

function humidityLines(context: JobContext, results: JobResults): readonly LineDraft[] {
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
        value: measured ? (valueOf(measured.delivered)?.returnAir.relativeHumidityPct ?? null) : null,
        note: "at startup",
        at: ["startup_record", "secondReturnWbF"],
      },
      lived: { value: log?.meanRhPct ?? null, note: log ? "mean of the log" : null, at },
    },
    {
      ...line("dry-hours", "Dry-hours", "h", 0),
      lived: {
        value: log?.dryHours ?? null,
        note: pct === null ? null : `${pct.toFixed(0)} % of ${log?.loggedHours.toFixed(0)} h logged`,
        at,
        rules: ["logs.dry-hours"],
      },
    },
    {
      ...line("share-50-60", "Time from 50 to 60 %", "%", 0),
      lived: { value: log?.share50To60Pct ?? null, at },
    },
  ];
}

function stageOf(results: JobResults, key: "first" | "second"): MeasuredStage | undefined {
  return results.startup.stages.find((one) => one.key === key);
}

function toLine(draft: LineDraft, findings: Readonly<Record<StageKey, readonly Finding[]>>): LedgerLine {
  const { key, group, label, unit, decimals } = draft;
  const cells = {
    designed: toCell(draft.designed, findings),
    set: toCell(draft.set, findings),
    measured: toCell(draft.measured, findings),
    lived: toCell(draft.lived, findings),
  };
  // The latest column that carries a verdict speaks for the line: what was lived outweighs what was set.
  const verdict: Verdict | null = cells.lived.verdict ?? cells.measured.verdict ?? cells.set.verdict;
  return { key, group, label, unit, decimals, cells, verdict };
}

function toCell(
  draft: CellDraft | undefined,
  findings: Readonly<Record<StageKey, readonly Finding[]>>,
): LedgerCell {
  if (!draft) return { value: null, uncertainty: null, verdict: null, note: null, evidence: null };
  const [stage, field] = draft.at ?? [];
  const judging =
    stage === undefined || draft.value === null
      ? []
      : findings[stage].filter((one) => draft.rules?.includes(one.ruleId) && one.verdict !== "not measured");
  return {
    value: draft.value,
    uncertainty: draft.uncertainty ?? null,
    verdict: worstVerdict(judging),
    note: draft.value === null ? null : (draft.note ?? null),
    evidence: stage === undefined || draft.value === null ? null : { stage, field: field ?? null },
  };
}
