import { vapourEnthalpyBtuPerLb } from "@/lib/engineering/air/vapour-enthalpy";
import { type PerformancePoint, performanceAt } from "@/lib/engineering/equipment";
import {
  coolingTableAt,
  type HeldCoilSystem,
  type SystemModel,
  type TableSystem,
} from "@/lib/engineering/simulation";
import type { EquipmentData, EquipmentModel } from "../catalog";
import type { SetAirflow } from "../evaluate/airflow-as-set";
import { coolingPoints, heldSystem } from "../evaluate/capacity";
import { valueIfKnown } from "../evaluate/context";
import { derive } from "../evaluate/derive";
import type { Assuming } from "./assumptions";

export type CapacitySetting = EquipmentData["capacitySettings"][number];
type HeldCoil = NonNullable<EquipmentData["heldCoil"]>;

/** Equipment with its capacity setting and the board's coil setting. */
export type ChosenEquipment = {
  readonly model: EquipmentModel;
  readonly setting: CapacitySetting;
  readonly colderCoil: boolean;
};
/** One stage: its airflow on the job's ducts, and the rows of the maker's table that speak of it. */
export type StageAsSet = { readonly airflow: SetAirflow; readonly table: string };
export type Heat = Pick<SystemModel, "heatPumpAt17FBtuh" | "heatPumpAt47FBtuh" | "auxiliaryKw">;
type Cooling = Omit<HeldCoilSystem, keyof Heat> | Omit<TableSystem, keyof Heat>;
type Electricity = Pick<SystemModel, "wattsPerBtuhAt82F" | "wattsPerBtuhAt95F">;

/** Outdoor temperatures between which electricity follows a straight line, °F. */
const COOL_F = 82;
const HOT_F = 95;
/** Rated indoor air of AHRI 210/240 (recalled). */
const RATED = { enteringWbF: 67, enteringDbF: 80 } as const;
const WATER_HEAT = vapourEnthalpyBtuPerLb(RATED.enteringDbF);
const SECONDS_PER_H = 3_600;

/** The cooling side of a system as the year's loop takes it; refusals of the engineering module are thrown. */
export function coolingSide(
  chosen: ChosenEquipment,
  stages: readonly StageAsSet[],
  assume: Assuming,
): Cooling {
  const { heldCoil } = chosen.model.data;
  return heldCoil === null ? fromTable(chosen, stages, assume) : holdsCoil(chosen, heldCoil, stages, assume);
}

function holdsCoil(
  chosen: ChosenEquipment,
  held: HeldCoil,
  stages: readonly StageAsSet[],
  assume: Assuming,
): Cooling {
  const { model, setting, colderCoil } = chosen;
  const { tons } = setting;
  const coil = heldSystem(model.data, held, { tons, nominalTons: model.nominalTons, colderCoil }, COOL_F);
  const capacitySettingPct = (100 * tons) / model.nominalTons;
  const leastCeilingBtuh = Math.min(
    ...held.fullCapacity.map((one) => (one.capacityBtuh * capacitySettingPct) / 100),
  );
  return {
    a0LbPerH: coil.a0LbPerH,
    approach: coil.approach,
    frostLimitF: coil.frostLimitF,
    ceiling: held.fullCapacity.toSorted((one, other) => one.outdoorDbF - other.outdoorDbF),
    ...electricity(null, assume),
    stages: stages.map(({ airflow }) => ({
      airflowCfm: airflow.airflowCfm,
      fanW: fanPower(airflow, assume),
      heldTemperatureF: coil.heldTemperatureF,
      capacitySettingPct,
      minimumCapacityBtuh: Math.min(coil.minimumCapacityBtuh, leastCeilingBtuh),
    })),
    settlingMin: held.settlingMin,
    ...water((held.ratedTotalBtuh * (1 - held.ratedSensibleRatio)) / WATER_HEAT, assume),
    noCoolingBelowF: assume.take("noCoolingBelowF"),
  };
}

function fromTable(chosen: ChosenEquipment, stages: readonly StageAsSet[], assume: Assuming): Cooling {
  const { model, setting } = chosen;
  const full = coolingPoints(model, setting.name);
  const fullCfm = stages.at(-1)?.airflow.airflowCfm ?? model.data.ratedAirflowCfm;
  const rated = performanceAt(full, { ...RATED, outdoorDbF: HOT_F, airflowCfm: fullCfm });
  return {
    ...electricity({ points: full, airflowCfm: fullCfm }, assume),
    stages: stages.map(({ airflow, table }) => ({
      airflowCfm: airflow.airflowCfm,
      fanW: fanPower(airflow, assume),
      table: coolingTableAt(coolingPoints(model, table), airflow.airflowCfm),
    })),
    settlingMin: 0,
    ...water(rated.latentBtuh / WATER_HEAT, assume),
    noCoolingBelowF: assume.take("noCoolingBelowF"),
  };
}

/** What the coil holds and gives back, from its steady removal at the rated point. */
function water(steadyLbPerH: number, assume: Assuming) {
  return {
    startTimeConstantS: assume.take("startTimeConstantS"),
    coilHoldsLb: (steadyLbPerH * assume.take("coilWetS")) / SECONDS_PER_H,
    firstEvaporationLbPerH: steadyLbPerH * assume.take("coilEvaporationRatio"),
  };
}

function fanPower({ powerW, airflowCfm }: SetAirflow, assume: Assuming): number {
  return powerW ?? airflowCfm * assume.take("fanWPerCfm");
}

type Table = { readonly points: readonly PerformancePoint[]; readonly airflowCfm: number };

/** Watts for each Btu/h from the maker's table where it prints power at both temperatures, else assumed. */
function electricity(table: Table | null, assume: Assuming): Electricity {
  const printed =
    table === null ? null : { cool: wattsPerBtuh(table, COOL_F), hot: wattsPerBtuh(table, HOT_F) };
  if (printed !== null && printed.cool !== null && printed.hot !== null) {
    return { wattsPerBtuhAt82F: printed.cool, wattsPerBtuhAt95F: Math.max(printed.cool, printed.hot) };
  }
  return {
    wattsPerBtuhAt82F: 1 / Math.max(assume.take("coolingBtuhPerWAt82F"), assume.take("coolingBtuhPerWAt95F")),
    wattsPerBtuhAt95F: 1 / assume.take("coolingBtuhPerWAt95F"),
  };
}

function wattsPerBtuh({ points, airflowCfm }: Table, outdoorDbF: number): number | null {
  const found = valueIfKnown(derive({}, () => performanceAt(points, { ...RATED, outdoorDbF, airflowCfm })));
  return found === null || found.powerW === null ? null : found.powerW / found.totalBtuh;
}
