import { type MoistAir, moistAir, standardPressurePsia } from "@/lib/engineering/air";
import { capacityMap, coolingRatios, type Fit, judgeFit } from "@/lib/engineering/equipment";
import { type AirflowAsSet, fanTable, onSameDucts } from "./airflow-as-set";
import { capacityOf, heldSystem } from "./capacity";
import { type Derived, type JobContext, unknown } from "./context";
import { andThen, derive } from "./derive";
import { type EquipmentResults, kindOf } from "./equipment";

/** One airflow setting with one capacity setting. A figure is `null` where it cannot be told; `reason` then says why. */
export type CapacityMapCell = {
  readonly airflowSetting: string;
  readonly airflowCfm: number | null;
  readonly capacitySetting: string;
  readonly totalBtuh: number | null;
  readonly sensibleBtuh: number | null;
  readonly latentBtuh: number | null;
  readonly sensibleRatio: number | null;
  readonly moistureLbPerH: number | null;
  readonly leavingDbF: number | null;
  readonly leavingDewPointF: number | null;
  readonly fit: Fit | null;
  readonly reason: string;
};
export type CapacityMap = { readonly cells: readonly CapacityMapCell[] };

type Figures = Omit<CapacityMapCell, "airflowSetting" | "airflowCfm" | "capacitySetting">;
type Design = {
  readonly indoorDbF: number;
  readonly indoorWbF: number;
  readonly entering: MoistAir;
  readonly outdoorDbF: number;
  readonly elevationFt: number;
  readonly sensibleLoadBtuh: number;
  readonly latentLoadBtuh: number;
};

/** Every airflow setting on this job's ducts with every capacity setting of the model, at design, against the load. */
export function capacityMapOf(
  context: JobContext,
  airflow: AirflowAsSet,
  equipment: EquipmentResults,
): Derived<CapacityMap> {
  const { model, elevationFt } = context;
  if (!model) return unknown(["equipmentModelId"]);
  const { indoorCoolingDbF, outdoorCoolingDbF, sensibleCoolingBtuh, latentCoolingBtuh } =
    context.inputs.load_summary;
  return andThen(airflow.second, (full) =>
    andThen(equipment.indoorWbF, (indoorWbF) =>
      derive(
        { elevationFt, indoorCoolingDbF, outdoorCoolingDbF, sensibleCoolingBtuh, latentCoolingBtuh },
        (given) => {
          const design: Design = {
            indoorDbF: given.indoorCoolingDbF,
            indoorWbF,
            entering: moistAir({
              dryBulbF: given.indoorCoolingDbF,
              wetBulbF: indoorWbF,
              pressurePsia: standardPressurePsia(given.elevationFt),
            }),
            outdoorDbF: given.outdoorCoolingDbF,
            elevationFt: given.elevationFt,
            sensibleLoadBtuh: given.sensibleCoolingBtuh,
            latentLoadBtuh: given.latentCoolingBtuh,
          };
          const table = fanTable(model);
          const settings = [...new Set(table.map((point) => point.setting))];
          return {
            cells: settings.flatMap((airflowSetting) => {
              const set = onSameDucts(table, airflowSetting, full);
              return model.data.capacitySettings.map(({ name: capacitySetting }): CapacityMapCell => {
                const at = { airflowSetting, capacitySetting };
                if (!set.known) return { ...at, airflowCfm: null, ...untold(set.problem) };
                const { airflowCfm } = set.value;
                const found = figuresOf(context, design, capacitySetting, airflowCfm);
                return { ...at, airflowCfm, ...(found.known ? found.value : untold(found.problem)) };
              });
            }),
          };
        },
      ),
    ),
  );
}

function figuresOf(
  context: JobContext,
  design: Design,
  capacitySetting: string,
  airflowCfm: number,
): Derived<Figures> {
  const { model } = context;
  const setting = model?.data.capacitySettings.find((one) => one.name === capacitySetting);
  if (!model || !setting) return unknown(["equipmentModelId"]);
  const colderCoil = context.inputs.control_setup.colderCoilCooling === true;
  const held = model.data.heldCoil;
  const loads = { sensibleLoadBtuh: design.sensibleLoadBtuh, latentLoadBtuh: design.latentLoadBtuh };
  const judging = { kind: kindOf(context), limits: context.limits };
  if (held) {
    return derive({}, (): Figures => {
      const { tons } = setting;
      const system = heldSystem(
        model.data,
        held,
        { tons, nominalTons: model.nominalTons, colderCoil },
        design.outdoorDbF,
      );
      const [cell] = capacityMap({
        entering: design.entering,
        coil: system,
        airflowSettings: [{ label: "", airflowCfm }],
        capacitySettings: [{ label: capacitySetting, ...system }],
        ...loads,
        ...judging,
      });
      return cell ? figures(cell.state, cell.fit, cell.reason) : untold(null);
    });
  }
  const capacity = capacityOf(
    { model, capacitySetting, stage: "second", colderCoil },
    { ...design, airflowCfm },
  );
  return andThen(capacity, (given) =>
    derive({}, (): Figures => {
      const ratios = coolingRatios({
        ...loads,
        totalCapacityBtuh: given.totalBtuh,
        sensibleCapacityBtuh: given.sensibleBtuh,
      });
      const { fit, reason } = judgeFit({ ratios, frostBoundAdpF: null, ...judging });
      return figures(given, fit, [reason, ...given.remarks].join(" "));
    }),
  );
}

/** Plain numbers of what a capacity, of either kind, has to say. */
function figures(from: Omit<Figures, "fit" | "reason">, fit: Fit, reason: string): Figures {
  const { totalBtuh, sensibleBtuh, latentBtuh, sensibleRatio } = from;
  const { moistureLbPerH, leavingDbF, leavingDewPointF } = from;
  return {
    totalBtuh,
    sensibleBtuh,
    latentBtuh,
    sensibleRatio,
    moistureLbPerH,
    leavingDbF,
    leavingDewPointF,
    fit,
    reason,
  };
}

function untold(problem: string | null): Figures {
  return {
    totalBtuh: null,
    sensibleBtuh: null,
    latentBtuh: null,
    sensibleRatio: null,
    moistureLbPerH: null,
    leavingDbF: null,
    leavingDewPointF: null,
    fit: null,
    reason: problem ?? "Not all values this needs are known.",
  };
}
