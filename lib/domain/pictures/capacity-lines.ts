import type { EquipmentModel } from "../catalog";
import type { Evaluation, JobContext } from "../evaluate";
import { capacityOf } from "../evaluate/capacity";
import { valueIfKnown } from "../evaluate/context";

/** Airflows computed between the ends of a line. */
const STEPS = 8;

type Point = { readonly airflowCfm: number; readonly capacityBtuh: number };

/**
 * Capacity at design over airflow: total and sensible of the chosen capacity setting, totals of the others,
 * and the house's loads. `null` until the design conditions and a capacity setting are known.
 */
export function capacityLinesPicture(context: JobContext, { results }: Evaluation) {
  const { model, elevationFt } = context;
  const { indoorCoolingDbF, outdoorCoolingDbF, sensibleCoolingBtuh, latentCoolingBtuh } =
    context.inputs.load_summary;
  const chosen = context.inputs.equipment_selection.capacitySetting;
  const indoorWbF = valueIfKnown(results.equipment.indoorWbF);
  const used = valueIfKnown(results.equipment.airflow);
  if (!model || chosen === null || elevationFt === null || indoorCoolingDbF === null) return null;
  if (outdoorCoolingDbF === null || indoorWbF === null) return null;
  const colderCoil = context.inputs.control_setup.colderCoilCooling === true;
  const airflows = airflowsOf(model, chosen, used?.cfm ?? null);
  const line = (capacitySetting: string, read: "totalBtuh" | "sensibleBtuh"): readonly Point[] =>
    airflows.flatMap((airflowCfm) => {
      const found = valueIfKnown(
        capacityOf(
          { model, capacitySetting, stage: "second", colderCoil },
          {
            indoorDbF: indoorCoolingDbF,
            indoorWbF,
            outdoorDbF: outdoorCoolingDbF,
            airflowCfm,
            elevationFt,
          },
        ),
      );
      return found ? [{ airflowCfm, capacityBtuh: found[read] }] : [];
    });
  const others = model.data.capacitySettings.filter((one) => one.name !== chosen);
  const setting = context.inputs.airflow_setup.secondStageAirflowSetting;
  return {
    series: [
      {
        key: "total",
        label: "total",
        tone: "a" as const,
        dashes: "solid" as const,
        points: line(chosen, "totalBtuh"),
      },
      {
        key: "sensible",
        label: "sensible",
        tone: "b" as const,
        dashes: "dashed" as const,
        points: line(chosen, "sensibleBtuh"),
      },
      ...others.map((one) => ({
        key: `total ${one.name}`,
        label: one.name,
        tone: "muted" as const,
        dashes: "dotted" as const,
        points: line(one.name, "totalBtuh"),
      })),
    ],
    loads:
      sensibleCoolingBtuh === null || latentCoolingBtuh === null
        ? []
        : [
            {
              key: "total",
              label: "total load",
              tone: "short" as const,
              loadBtuh: sensibleCoolingBtuh + latentCoolingBtuh,
            },
            {
              key: "sensible",
              label: "sensible load",
              tone: "short" as const,
              loadBtuh: sensibleCoolingBtuh,
            },
          ],
    settings: used
      ? [
          {
            key: "used",
            label: used.isRated || setting === null ? "rated airflow" : `setting ${setting}`,
            airflowCfm: used.cfm,
            chosen: true,
          },
        ]
      : [],
  };
}

/** What the fan table spans where airflow decides, else what the setting's own performance table lists; and the airflow in use. */
function airflowsOf(model: EquipmentModel, setting: string, usedCfm: number | null): readonly number[] {
  const listed = model.data.heldCoil
    ? model.fan.map((row) => row.airflowCfm)
    : model.performance
        .filter((row) => row.mode === "cooling" && row.capacitySetting === setting)
        .map((row) => row.airflowCfm);
  if (listed.length === 0) return usedCfm === null ? [] : [usedCfm];
  const least = Math.min(...listed);
  const most = Math.max(...listed);
  const even = Array.from({ length: STEPS + 1 }, (_, index) => least + ((most - least) * index) / STEPS);
  return [...new Set(usedCfm === null ? even : [...even, usedCfm])].sort((a, b) => a - b);
}
