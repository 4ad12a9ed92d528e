import type { Verdict } from "@/lib/engineering/findings";
import { type Evaluation, evaluateJob } from "../evaluate";
import { fanTable, onSameDucts } from "../evaluate/airflow-as-set";
import { type JobContext, valueIfKnown } from "../evaluate/context";
import { worstVerdict } from "../jobs";
import type { StageInputs } from "../stages";

/** What one small change does to an option. Differences are "with the change" minus "as it stands". */
export type Sensitivity = {
  readonly change: string;
  /** Capacity as a share of its load, percentage points. */
  readonly latentPoints: number;
  readonly sensiblePoints: number;
  readonly moistureLbPerH: number;
  readonly verdictBefore: Verdict | null;
  readonly verdictAfter: Verdict | null;
};

const LOAD_CHANGE_PCT = 5;

/**
 * An option computed again with one thing changed: the next airflow setting down and up, and the latent and sensible
 * loads 5 % lower and higher. The strongest first: a change of the verdict, then the larger shift of a load's cover.
 */
export function sensitivityOf(context: JobContext, now: Evaluation): readonly Sensitivity[] {
  const base = coverOf(context, now);
  if (base === null) return [];
  const found = changesOf(context, now).flatMap(({ change, inputs }): Sensitivity[] => {
    const changed = { ...context, inputs };
    const after = coverOf(changed, evaluateJob(changed));
    if (after === null) return [];
    return [
      {
        change,
        latentPoints: after.latentPct - base.latentPct,
        sensiblePoints: after.sensiblePct - base.sensiblePct,
        moistureLbPerH: after.moistureLbPerH - base.moistureLbPerH,
        verdictBefore: base.verdict,
        verdictAfter: after.verdict,
      },
    ];
  });
  return found.toSorted((one, other) => weight(other) - weight(one));
}

function weight(one: Sensitivity): number {
  const turns = one.verdictBefore === one.verdictAfter ? 0 : 1_000;
  return turns + Math.max(Math.abs(one.latentPoints), Math.abs(one.sensiblePoints));
}

function coverOf({ inputs }: JobContext, { results, findings }: Evaluation) {
  const capacity = valueIfKnown(results.equipment.full);
  const { sensibleCoolingBtuh: sensible, latentCoolingBtuh: latent } = inputs.load_summary;
  if (!capacity || !sensible || !latent) return null;
  return {
    sensiblePct: (100 * capacity.sensibleBtuh) / sensible,
    latentPct: (100 * capacity.latentBtuh) / latent,
    moistureLbPerH: capacity.moistureLbPerH,
    verdict: worstVerdict(findings.equipment_selection),
  };
}

type Change = { readonly change: string; readonly inputs: StageInputs };

function changesOf(context: JobContext, now: Evaluation): readonly Change[] {
  const { inputs } = context;
  const load = inputs.load_summary;
  const scaled = (field: "latentCoolingBtuh" | "sensibleCoolingBtuh", name: string, pct: number): Change => ({
    change: `${name} load ${pct > 0 ? "+" : "−"}${Math.abs(pct)} %`,
    inputs: { ...inputs, load_summary: { ...load, [field]: (load[field] ?? 0) * (1 + pct / 100) } },
  });
  return [
    ...airflowNeighbours(context, now),
    scaled("latentCoolingBtuh", "latent", LOAD_CHANGE_PCT),
    scaled("latentCoolingBtuh", "latent", -LOAD_CHANGE_PCT),
    scaled("sensibleCoolingBtuh", "sensible", LOAD_CHANGE_PCT),
    scaled("sensibleCoolingBtuh", "sensible", -LOAD_CHANGE_PCT),
  ];
}

/** The settings whose airflow on these ducts comes next below and above the chosen one. */
function airflowNeighbours({ model, inputs }: JobContext, now: Evaluation): readonly Change[] {
  const full = valueIfKnown(now.results.airflow.second);
  if (!model || !full) return [];
  const table = fanTable(model);
  const ladder = [...new Set(table.map((point) => point.setting))]
    .flatMap((setting) => valueIfKnown(onSameDucts(table, setting, full)) ?? [])
    .toSorted((one, other) => one.airflowCfm - other.airflowCfm);
  const at = ladder.findIndex((one) => one.setting === full.setting);
  return [ladder[at - 1], ladder[at + 1]].flatMap((next) => {
    if (at < 0 || next === undefined) return [];
    const words = next.airflowCfm < full.airflowCfm ? "one setting less air" : "one setting more air";
    return [
      {
        change: `${words} (“${next.setting}”, ${Math.round(next.airflowCfm).toLocaleString("en-US")} cfm)`,
        inputs: {
          ...inputs,
          airflow_setup: {
            ...inputs.airflow_setup,
            secondStageAirflowSetting: next.setting,
            designExternalStaticInWc: next.externalStaticInWc,
          },
        },
      },
    ];
  });
}
