import type { EquipmentModel } from "@/lib/domain/catalog";
import { type Capacity, capacityOf } from "@/lib/domain/evaluate/capacity";
import type { StartupRecordInputs } from "@/lib/domain/stages/startup-record";
import { type MoistAir, moistAir, standardPressurePsia } from "@/lib/engineering/air";
import { gaugePressurePsig, type Refrigerant, saturationPressurePsia } from "@/lib/engineering/refrigerant";
import { deviations, shown } from "./deviations";

export type StageAsFound = {
  readonly model: EquipmentModel;
  readonly capacitySetting: string;
  readonly colderCoil: boolean;
  readonly stage: "first" | "second";
  readonly elevationFt: number;
  readonly outdoorDbF: number;
  readonly returnDbF: number;
  readonly returnRhPct: number;
  readonly airflowCfm: number;
  readonly externalStaticInWc: number;
  readonly fanPowerW: number;
  /** Delivered over expected, invented: 1 is a healthy system. */
  readonly totalShare: number;
  readonly moistureShare: number;
  readonly superheatF: number;
  readonly subcoolingF: number;
  readonly moistureReadAs: "wet bulb" | "relative humidity";
  readonly seed: number;
};

const CONDENSATE_MIN = 30;
const CONDENSING_ABOVE_OUTDOOR_F = 20;

/**
 * Readings an instrument would show on such a system: what the model's data say it gives at these
 * conditions, times the invented shares, turned back into air and refrigerant states, each with a small
 * repeatable deviation.
 */
export function stageReadings<S extends "first" | "second">(
  found: StageAsFound & { readonly stage: S },
): Partial<StartupRecordInputs> {
  const off = deviations(found.seed);
  const pressurePsia = standardPressurePsia(found.elevationFt);
  const entering = moistAir({
    dryBulbF: found.returnDbF,
    relativeHumidityPct: found.returnRhPct,
    pressurePsia,
  });
  const capacity = expectedCapacity(found, entering);
  const leaving = leavingAir(entering, found, capacity);
  const { evaporatingF, condensingF } = saturationsOf(found, capacity);
  const refrigerant = found.model.refrigerant as Refrigerant;
  const gauge = (tempF: number, side: "dew" | "bubble") =>
    gaugePressurePsig(saturationPressurePsia(refrigerant, tempF, side), pressurePsia);
  const moisture = (place: "Return" | "Supply", air: MoistAir) =>
    found.moistureReadAs === "wet bulb"
      ? { [`${place}WbF`]: shown(air.wetBulbF + off(0.1), 1) }
      : { [`${place}RhPct`]: shown(Math.min(air.relativeHumidityPct + off(0.5), 99), 1) };
  const caughtLb = capacity.moistureLbPerH * found.moistureShare * (CONDENSATE_MIN / 60);
  const readings = {
    StabilisedMin: 20,
    AirflowCfm: Math.round(found.airflowCfm * (1 + off(0.01))),
    AirflowMethod: "flow plate",
    ReturnDbF: shown(entering.dryBulbF + off(0.1), 1),
    ...moisture("Return", entering),
    SupplyDbF: shown(leaving.dryBulbF + off(0.1), 1),
    ...moisture("Supply", leaving),
    ReturnStaticInWc: shown(found.externalStaticInWc * 0.45, 2),
    SupplyStaticInWc: shown(found.externalStaticInWc * 0.55 + 0.005, 2),
    SuctionPressurePsig: shown(gauge(evaporatingF, "dew"), 1),
    SuctionLineF: shown(evaporatingF + found.superheatF + off(0.3), 1),
    LiquidPressurePsig: shown(gauge(condensingF, "bubble"), 1),
    LiquidLineF: shown(condensingF - found.subcoolingF + off(0.3), 1),
    FanPowerW: Math.round(found.fanPowerW * (1 + off(0.02))),
    CondensateLb: shown(caughtLb * (1 + off(0.03)), 2),
    CondensateMin: CONDENSATE_MIN,
  };
  return Object.fromEntries(
    Object.entries(readings).map(([key, value]) => [`${found.stage}${key}`, value]),
  ) as Partial<StartupRecordInputs>;
}

function expectedCapacity(found: StageAsFound, entering: MoistAir): Capacity {
  const { model, capacitySetting, stage, colderCoil, outdoorDbF, airflowCfm, elevationFt } = found;
  const capacity = capacityOf(
    { model, capacitySetting, stage, colderCoil },
    { indoorDbF: entering.dryBulbF, indoorWbF: entering.wetBulbF, outdoorDbF, airflowCfm, elevationFt },
  );
  if (!capacity.known) throw new Error(`No capacity for the demo's startup: ${capacity.problem}`);
  return capacity.value;
}

/** The leaving state whose air-side balance, heat in the drain water left out, gives the delivered capacity. */
function leavingAir(entering: MoistAir, found: StageAsFound, capacity: Capacity): MoistAir {
  const dryAirLbPerH = (found.airflowCfm * 60) / entering.specificVolumeFt3PerLb;
  const totalBtuh = capacity.totalBtuh * found.totalShare;
  const waterLbPerH = capacity.moistureLbPerH * found.moistureShare;
  const humidityRatio = entering.humidityRatio - waterLbPerH / dryAirLbPerH;
  // dryAir·(h_in − 0.240t − W(1061 + 0.444t)) − water·(t − 32) = total, solved for t.
  const dryBulbF =
    (dryAirLbPerH * (entering.enthalpyBtuPerLb - 1_061 * humidityRatio) + 32 * waterLbPerH - totalBtuh) /
    (dryAirLbPerH * (0.24 + 0.444 * humidityRatio) + waterLbPerH);
  return moistAir({ dryBulbF, humidityRatio, pressurePsia: entering.pressurePsia });
}

/** Plausible evaporating and condensing temperatures: invented, apart from a held coil's own setting. */
function saturationsOf(found: StageAsFound, capacity: Capacity) {
  const held = found.model.data.heldCoil;
  const condensingF = found.outdoorDbF + CONDENSING_ABOVE_OUTDOOR_F - (found.stage === "first" ? 5 : 0);
  if (held === null) return { evaporatingF: found.stage === "first" ? 47 : 44, condensingF };
  const approachF = (held.approachAtRatedF * capacity.totalBtuh) / held.ratedTotalBtuh;
  return { evaporatingF: (capacity.coilF ?? 50) - approachF, condensingF };
}
