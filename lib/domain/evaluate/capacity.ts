import { moistAir, standardPressurePsia } from "@/lib/engineering/air";
import {
  type CoilTemperatureHeldSystem,
  capacityCeilingBtuh,
  coilFromRating,
  coilTemperatureHeld,
  type PerformancePoint,
  performanceAt,
  type RatedCoil,
} from "@/lib/engineering/equipment";
import type { EquipmentData, EquipmentModel, PerformanceRow } from "../catalog";
import type { Capacity, Conditions } from "./capacity-shape";
import { type Derived, known, unknown } from "./context";
import { derive } from "./derive";
import { tableCapacity } from "./table-capacity";

export type { Capacity, Conditions } from "./capacity-shape";

export type SystemSetting = {
  readonly model: EquipmentModel;
  readonly capacitySetting: string;
  readonly stage: "first" | "second";
  readonly colderCoil: boolean;
};

/**
 * Capacity of a system as set, at the given conditions: from the maker's table, or, where the compressor
 * holds a coil temperature, from the airflow.
 */
export function capacityOf(system: SystemSetting, at: Conditions): Derived<Capacity> {
  const setting = system.model.data.capacitySettings.find((one) => one.name === system.capacitySetting);
  if (!setting) {
    return unknown(
      ["capacitySetting"],
      `${system.model.name} has no capacity setting “${system.capacitySetting}”. Choose one from its list.`,
    );
  }
  const { heldCoil } = system.model.data;
  if (heldCoil) return derive({}, () => heldCoilCapacity(system, heldCoil, setting.tons, at));
  const table = system.stage === "first" ? setting.firstStageTable : setting.name;
  if (table === null) return unknown([], `${system.model.name} has no first stage of its own.`);
  return derive({}, () =>
    tableCapacity(
      performanceAt(coolingPoints(system.model, table), {
        outdoorDbF: at.outdoorDbF,
        enteringWbF: at.indoorWbF,
        enteringDbF: at.indoorDbF,
        airflowCfm: at.airflowCfm,
      }),
      at,
    ),
  );
}

/** The cooling rows of a model's table under one name. */
export function coolingPoints(model: EquipmentModel, table: string): readonly PerformancePoint[] {
  return model.performance
    .filter((row) => row.mode === "cooling" && row.capacitySetting === table)
    .flatMap(toPoint);
}

/** The settings of the held coil at an outdoor temperature, as the engineering module takes them. */
export function heldSystem(
  data: EquipmentData,
  heldCoil: NonNullable<EquipmentData["heldCoil"]>,
  setting: { readonly tons: number; readonly nominalTons: number; readonly colderCoil: boolean },
  outdoorDbF: number,
): CoilTemperatureHeldSystem {
  const coil = ratedCoil(data, heldCoil);
  const ceiling = capacityCeilingBtuh(
    heldCoil.fullCapacity,
    outdoorDbF,
    (100 * setting.tons) / setting.nominalTons,
  );
  const full = capacityCeilingBtuh(heldCoil.fullCapacity, outdoorDbF, 100);
  return {
    a0LbPerH: coil.a0LbPerH,
    approach: {
      kind: "grows with capacity",
      ratedApproachF: heldCoil.approachAtRatedF,
      ratedTotalBtuh: heldCoil.ratedTotalBtuh,
    },
    heldTemperatureF: heldCoil.heldTemperatureF - (setting.colderCoil ? heldCoil.colderCoilByF : 0),
    capacityCeilingBtuh: ceiling,
    minimumCapacityBtuh: Math.min(full * heldCoil.minimumCapacityShare, ceiling),
    frostLimitF: heldCoil.frostLimitF,
  };
}

const ratedCoils = new WeakMap<EquipmentData, RatedCoil>();

/** The coil follows from the model alone, and a job asks for it some twenty times. */
function ratedCoil(data: EquipmentData, heldCoil: NonNullable<EquipmentData["heldCoil"]>): RatedCoil {
  const known = ratedCoils.get(data);
  if (known !== undefined) return known;
  // The rated point of the trade: 80 °F dry bulb, 67 °F wet bulb at sea level (AHRI 210/240, recalled).
  const rated = moistAir({ dryBulbF: 80, wetBulbF: 67, pressurePsia: standardPressurePsia(0) });
  const coil = coilFromRating({
    entering: rated,
    airflowCfm: data.ratedAirflowCfm,
    totalBtuh: heldCoil.ratedTotalBtuh,
    sensibleRatio: heldCoil.ratedSensibleRatio,
  });
  ratedCoils.set(data, coil);
  return coil;
}

function heldCoilCapacity(
  system: SystemSetting,
  heldCoil: NonNullable<EquipmentData["heldCoil"]>,
  tons: number,
  at: Conditions,
): Capacity {
  const { model, colderCoil } = system;
  const entering = moistAir({
    dryBulbF: at.indoorDbF,
    wetBulbF: at.indoorWbF,
    pressurePsia: standardPressurePsia(at.elevationFt),
  });
  const state = coilTemperatureHeld({
    entering,
    airflowCfm: at.airflowCfm,
    system: heldSystem(
      model.data,
      heldCoil,
      { tons, nominalTons: model.nominalTons, colderCoil },
      at.outdoorDbF,
    ),
  });
  return {
    totalBtuh: state.totalBtuh,
    sensibleBtuh: state.sensibleBtuh,
    latentBtuh: state.latentBtuh,
    sensibleRatio: state.sensibleRatio ?? 1,
    moistureLbPerH: state.moistureLbPerH,
    leavingDewPointF: state.leavingDewPointF,
    leavingDbF: state.leavingDbF,
    coilF: state.adpF,
    from: "coil temperature held",
    remarks: state.limitedBy === "held temperature" ? [] : [`Limited by the ${state.limitedBy}.`],
  };
}

function toPoint(row: PerformanceRow): PerformancePoint[] {
  const { enteringWbF, sensibleBtuh } = row;
  return enteringWbF === null || sensibleBtuh === null ? [] : [{ ...row, enteringWbF, sensibleBtuh }];
}

/** The model and capacity setting of a selection, once both are chosen. */
export function chosenSystem(
  model: EquipmentModel | null,
  capacitySetting: string | null,
  colderCoil: boolean | null,
): Derived<Omit<SystemSetting, "stage">> {
  if (!model) return unknown(["equipmentModelId"]);
  if (capacitySetting === null) return unknown(["capacitySetting"]);
  return known({ model, capacitySetting, colderCoil: colderCoil === true });
}
