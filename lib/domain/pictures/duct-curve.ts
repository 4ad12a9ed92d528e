import { ductCoefficient, fanOperatingPoint, type OperatingPoint } from "@/lib/engineering/airflow";
import type { EquipmentModel } from "../catalog";
import type { Evaluation, JobContext } from "../evaluate";
import { fanTable } from "../evaluate/airflow-as-set";
import { valueIfKnown } from "../evaluate/context";
import { derive } from "../evaluate/derive";

/** Points on a drawn duct curve. */
const STEPS = 24;

/** The fan table, one curve a setting. */
export function curvesOf(model: EquipmentModel, chosen: readonly (string | null)[]) {
  const names = [...new Set(model.fan.map(({ airflowSetting }) => airflowSetting))];
  return names.map((name) => ({
    name,
    chosen: chosen.includes(name),
    points: model.fan
      .filter(({ airflowSetting }) => airflowSetting === name)
      .toSorted((a, b) => a.externalStaticInWc - b.externalStaticInWc),
  }));
}

export function limitOf(model: EquipmentModel) {
  const inWc = model.data.limits.maxExternalStaticInWc;
  return inWc === null ? null : { label: "maker's maximum", inWc };
}

/** The fan table alone; `null` without one. */
export function fanCurvesPicture(model: EquipmentModel) {
  if (model.fan.length === 0) return null;
  return { settings: curvesOf(model, []), ducts: [], meets: [], remarks: [], limit: limitOf(model) };
}

/**
 * The job's ducts on the fan table: where each setting meets them, and the chosen ones again with a loaded
 * filter. `null` until equipment with a fan table is chosen; the curves alone until the ducts are known.
 */
export function ductCurvePicture(context: JobContext, { results }: Evaluation) {
  const { model } = context;
  const inputs = context.inputs.airflow_setup;
  if (!model || model.fan.length === 0) return null;
  const chosen = [inputs.firstStageAirflowSetting, inputs.secondStageAirflowSetting];
  const settings = curvesOf(model, chosen);
  const full = valueIfKnown(results.airflow.second);
  const limit = limitOf(model);
  if (full === null) return { settings, ducts: [], meets: [], remarks: [], limit };
  const k = valueIfKnown(derive({}, () => ductCoefficient(full)));
  if (k === null) return { settings, ducts: [], meets: [], remarks: [], limit };
  const loaded = loadedCoefficient(inputs.filterDropInWc, inputs.filterLoadedDropInWc, full);
  const systems = [
    { key: "clean", label: "ducts", coefficient: k, only: null },
    ...(loaded === null
      ? []
      : [{ key: "loaded", label: "filter loaded", coefficient: loaded, only: chosen }]),
  ];
  const table = fanTable(model);
  const most = Math.max(...model.fan.map(({ airflowCfm }) => airflowCfm));
  const highest = Math.max(...model.fan.map(({ externalStaticInWc }) => externalStaticInWc));
  const found = systems.flatMap((system) =>
    settings
      .filter(({ name }) => system.only === null || system.only.includes(name))
      .flatMap(({ name, chosen: isChosen }) => {
        const point = valueIfKnown(
          derive({}, () => fanOperatingPoint({ table, setting: name, ductCoefficient: system.coefficient })),
        );
        return point ? [{ point, system, isChosen }] : [];
      }),
  );
  return {
    settings,
    limit,
    ducts: systems.map(({ key, label, coefficient }) => ({
      key,
      label,
      tone: key === "clean" ? ("b" as const) : ("c" as const),
      dashes: key === "clean" ? ("solid" as const) : ("dashed" as const),
      points: ductPoints(coefficient, Math.min(most, Math.sqrt(highest / coefficient))),
    })),
    meets: found.flatMap(({ point, system, isChosen }) =>
      point.kind === "on the table"
        ? [
            {
              setting: point.setting,
              ducts: system.label,
              chosen: isChosen,
              airflowCfm: point.airflowCfm as number,
              externalStaticInWc: point.externalStaticInWc as number,
              powerW: point.powerW as number | null,
            },
          ]
        : [],
    ),
    remarks: [
      ...found.flatMap(({ point, system, isChosen }) => (isChosen ? offTable(point, system.label) : [])),
      ...(loaded === null
        ? []
        : ["The loaded filter's drop is taken as ∝ cfm², like the ducts' (common practice, no source)."]),
    ],
  };
}

/** The ducts with the filter's drop grown from clean to loaded; `null` until both are entered and it has grown. */
function loadedCoefficient(
  cleanInWc: number | null,
  loadedInWc: number | null,
  full: { readonly airflowCfm: number; readonly externalStaticInWc: number },
): number | null {
  if (cleanInWc === null || loadedInWc === null || loadedInWc <= cleanInWc) return null;
  const externalStaticInWc = full.externalStaticInWc + loadedInWc - cleanInWc;
  return valueIfKnown(derive({}, () => ductCoefficient({ airflowCfm: full.airflowCfm, externalStaticInWc })));
}

function offTable(point: OperatingPoint, ducts: string): readonly string[] {
  if (point.kind === "on the table") return [];
  return [
    `Setting ${point.setting} meets the ${ducts === "ducts" ? "ducts" : "ducts with the loaded filter"} ${point.side} the fan table lists (${point.listedStaticInWc} in. w.c.).`,
  ];
}

function ductPoints(coefficient: number, mostCfm: number) {
  return Array.from({ length: STEPS + 1 }, (_, step) => {
    const airflowCfm = (mostCfm * step) / STEPS;
    return { airflowCfm, externalStaticInWc: coefficient * airflowCfm ** 2 };
  });
}
