import { type ControlSettings, requireControlSettings } from "../controls/settings";
import type { Approach, CeilingPoint } from "../equipment";
import { ImpossibleStateError } from "../errors";
import { requireRange } from "../units";
import type { CoolingTable } from "./cooling-table";

/** One cooling stage as it is set. */
export type SystemStage = {
  /** 50 to 20,000 cfm. */
  readonly airflowCfm: number;
  /** Fan power, 0 to 5,000 W. */
  readonly fanW: number;
};

/** A stage whose compressor holds a coil temperature. */
export type HeldCoilStage = SystemStage & {
  /** Evaporating temperature held, 20 to 70 °F. */
  readonly heldTemperatureF: number;
  /** Share of the full ceiling, 10 to 100 %. */
  readonly capacitySettingPct: number;
  /** Least capacity without cycling, Btu/h, 0 to the ceiling. */
  readonly minimumCapacityBtuh: number;
};

/** A stage that gives what the maker's table says. */
export type TableStage = SystemStage & { readonly table: CoolingTable };

/** A compressor that holds a coil temperature: airflow decides the capacity. */
export type HeldCoilSystem = SystemCommon & {
  readonly a0LbPerH: number;
  readonly approach: Approach;
  readonly frostLimitF: number;
  /** The maker's full capacity by outdoor temperature. Below the coolest point it stays; above the hottest it is refused. */
  readonly ceiling: readonly CeilingPoint[];
  /** One or two, the larger second. */
  readonly stages: readonly HeldCoilStage[];
};

/** Equipment known by the maker's table. It follows a stage change at once: `settlingMin` is 0. */
export type TableSystem = SystemCommon & {
  /** One or two, the larger second. */
  readonly stages: readonly TableStage[];
};

export type SystemModel = HeldCoilSystem | TableSystem;

/** What both kinds of equipment have. */
type SystemCommon = {
  /** Compressor and outdoor fan, W for each Btu/h at 82 and 95 °F outdoors; a straight line through them, 0.01 to 1. */
  readonly wattsPerBtuhAt82F: number;
  readonly wattsPerBtuhAt95F: number;
  /** Minutes until the compressor has followed a stage change but for 2 %, 0 to 120. */
  readonly settlingMin: number;
  /** Capacity's time constant after a start, 1 to 600 s. */
  readonly startTimeConstantS: number;
  /** Water the wet coil holds, 0.01 to 20 lb. */
  readonly coilHoldsLb: number;
  /** First evaporation off the full coil into 80 °F, 67 °F wet-bulb air at the first stage's airflow, 0 to 100 lb/h. */
  readonly firstEvaporationLbPerH: number;
  /** No cooling with the outdoors below this, −60 to 90 °F. */
  readonly noCoolingBelowF: number;
  /** Heat pump and auxiliary heat together hold the heating setpoint. */
  readonly heatPumpAt17FBtuh: number;
  readonly heatPumpAt47FBtuh: number;
  readonly auxiliaryKw: number;
};

/** Setpoints and the thermostat's settings. */
export type YearControls = {
  readonly settings: ControlSettings;
  /** 60 to 90 °F. */
  readonly coolingSetpointF: number;
  /** 45 °F to the cooling setpoint. */
  readonly heatingSetpointF: number;
  /** Above this relative humidity cooling goes on past the setpoint as far as the settings let it, 20 to 90 %. */
  readonly dryAbovePct: number;
};

/** A dehumidifier in the rooms, at one capacity; `null` in the model means none. */
export type DehumidifierModel = {
  /** At its rating air, 1 to 500 pint/day. */
  readonly ratedPintsPerDay: number;
  /** The rating air. */
  readonly ratedDbF: number;
  readonly ratedRhPct: number;
  /** 10 to 5,000 W. */
  readonly powerW: number;
  /** Starts above, stops below, 20 to 90 %. */
  readonly startAbovePct: number;
  readonly stopBelowPct: number;
};

/** Whether the compressor holds a coil temperature. */
export function isHeldCoil(system: SystemModel): system is HeldCoilSystem {
  return "a0LbPerH" in system;
}

/**
 * Refuses a system, controls or dehumidifier the year cannot be run for; the coil itself is checked by `coilConstants`.
 *
 * @param system - Ranges at {@link SystemModel}.
 * @param controls - Ranges at {@link YearControls}.
 * @param dehumidifier - Ranges at {@link DehumidifierModel}.
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} naming the field.
 */
export function requireSystem(
  system: SystemModel,
  controls: YearControls,
  dehumidifier: DehumidifierModel | null,
): void {
  requireRange("number of stages", system.stages.length, "", 1, 2);
  for (const stage of system.stages) {
    requireRange("stages.airflowCfm", stage.airflowCfm, "cfm", 50, 20_000);
    requireRange("stages.fanW", stage.fanW, "W", 0, 5_000);
  }
  if (isHeldCoil(system)) {
    for (const { capacitySettingPct } of system.stages)
      requireRange("stages.capacitySettingPct", capacitySettingPct, "%", 10, 100);
  } else requireRange("settlingMin", system.settlingMin, "min", 0, 0);
  requireRange("wattsPerBtuhAt82F", system.wattsPerBtuhAt82F, "W/(Btu/h)", 0.01, 1);
  requireRange("wattsPerBtuhAt95F", system.wattsPerBtuhAt95F, "W/(Btu/h)", system.wattsPerBtuhAt82F, 1);
  requireRange("settlingMin", system.settlingMin, "min", 0, 120);
  requireRange("startTimeConstantS", system.startTimeConstantS, "s", 1, 600);
  requireRange("coilHoldsLb", system.coilHoldsLb, "lb", 0.01, 20);
  requireRange("firstEvaporationLbPerH", system.firstEvaporationLbPerH, "lb/h", 0, 100);
  requireRange("noCoolingBelowF", system.noCoolingBelowF, "°F", -60, 90);
  requireRange("heatPumpAt17FBtuh", system.heatPumpAt17FBtuh, "Btu/h", 0, 1e6);
  requireRange("heatPumpAt47FBtuh", system.heatPumpAt47FBtuh, "Btu/h", system.heatPumpAt17FBtuh, 1e6);
  requireRange("auxiliaryKw", system.auxiliaryKw, "kW", 0, 100);
  requireControlSettings(controls.settings, system.stages.length);
  requireRange("coolingSetpointF", controls.coolingSetpointF, "°F", 60, 90);
  requireRange("heatingSetpointF", controls.heatingSetpointF, "°F", 45, 90);
  if (controls.heatingSetpointF > controls.coolingSetpointF) {
    throw new ImpossibleStateError(
      `The heating setpoint of ${controls.heatingSetpointF} °F lies above the cooling setpoint of ${controls.coolingSetpointF} °F: heating and cooling would run against each other. Lower the one or raise the other.`,
      ["heatingSetpointF", "coolingSetpointF"],
    );
  }
  requireRange("dryAbovePct", controls.dryAbovePct, "%", 20, 90);
  if (dehumidifier === null) return;
  requireRange("ratedPintsPerDay", dehumidifier.ratedPintsPerDay, "pint/day", 1, 500);
  requireRange("ratedDbF", dehumidifier.ratedDbF, "°F", 55, 90);
  requireRange("ratedRhPct", dehumidifier.ratedRhPct, "%", 30, 90);
  requireRange("powerW", dehumidifier.powerW, "W", 10, 5_000);
  requireRange("startAbovePct", dehumidifier.startAbovePct, "%", 20, 90);
  requireRange("stopBelowPct", dehumidifier.stopBelowPct, "%", 20, 90);
  if (dehumidifier.stopBelowPct >= dehumidifier.startAbovePct) {
    throw new ImpossibleStateError("The dehumidifier has to stop below the humidity at which it starts.", [
      "stopBelowPct",
      "startAbovePct",
    ]);
  }
}
