import { LOAD_PARTS, type LoadTotal } from "@/lib/engineering/load";
import { waterFromLatent } from "@/lib/engineering/moisture";
import type { LoadSummaryInputs } from "../stages/load-summary";
import { type JobContext, valueIfKnown } from "./context";
import { type CellDraft, type LineDraft, stageOf } from "./ledger-draft";
import type { JobResults } from "./results";

/** A ledger cell has room for so many. */
const MOST_PARTS = 3;

/** What the system cools and dries. */
export function capacityLines(context: JobContext, results: JobResults): readonly LineDraft[] {
  const load = context.inputs.load_summary;
  const full = valueIfKnown(results.equipment.full);
  const measured = results.startup.stages.find((one) => one.key === "second");
  const delivered = measured ? valueIfKnown(measured.delivered) : null;
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
      designed: {
        value: load.sensibleCoolingBtuh,
        note: largestParts(load, "sensibleCoolingBtuh"),
        at: ["load_summary", "sensibleCoolingBtuh"],
        rules: ["load.components-sensible"],
      },
      set: set(full?.sensibleBtuh, ["equipment.sensible-capacity"]),
      measured: read(delivered?.sensibleBtuh, ["startup.sensible-capacity"]),
      lived: {
        value: context.log?.analysis?.loadLine?.atDesign?.sensibleBtuh ?? null,
        note: "design day's peak hour by running time",
        at: ["humidity_review", "logImportId"],
        rules: ["logs.load-summary", "logs.oversize"],
      },
    },
    {
      ...line("latent", "Latent cooling", "Btu/h", 0),
      designed: {
        value: load.latentCoolingBtuh,
        note: largestParts(load, "latentCoolingBtuh"),
        at: ["load_summary", "latentCoolingBtuh"],
        rules: ["load.components-latent"],
      },
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

/** The parts a load is mostly made of, where it is known by component: `windows and glass doors 41 %, people 12 %`. */
function largestParts(load: LoadSummaryInputs, total: LoadTotal): string | null {
  const parts = Object.entries(LOAD_PARTS[total].parts).flatMap(([field, label]) => {
    const value = load[field as keyof LoadSummaryInputs];
    return typeof value === "number" && value > 0 ? [{ label, value }] : [];
  });
  const sum = parts.reduce((before, part) => before + part.value, 0);
  if (sum === 0) return null;
  const largest = parts.toSorted((one, other) => other.value - one.value).slice(0, MOST_PARTS);
  return largest.map(({ label, value }) => `${label} ${((100 * value) / sum).toFixed(0)} %`).join(", ");
}

/** What the fan moves against the ducts. */
export function airflowLines(context: JobContext, results: JobResults): readonly LineDraft[] {
  const inputs = context.inputs.airflow_setup;
  const second = valueIfKnown(results.airflow.second);
  const first = valueIfKnown(results.airflow.first);
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
      designed: {
        value: valueIfKnown(results.designCfm),
        at: ["airflow_setup", "secondStageAirflowSetting"],
      },
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
        value: valueIfKnown(results.equipment.full)?.leavingDewPointF ?? null,
        at: ["airflow_setup", "secondStageAirflowSetting"],
      },
      measured: {
        value: fullMeasured ? (valueIfKnown(fullMeasured.delivered)?.supplyAir.dewPointF ?? null) : null,
        at: ["startup_record", "secondSupplyWbF"],
      },
    },
  ];
}
