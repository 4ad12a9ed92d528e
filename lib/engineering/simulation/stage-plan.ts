import type { MoistAir } from "../air";
import { type CoilAtFlow, capacityCeilingBtuh, coilAtFlow, coilConstants } from "../equipment";
import { requireRange } from "../units";
import type { Weather } from "../weather";
import type { CoolingTable } from "./cooling-table";
import { type HeldCoilSystem, isHeldCoil, type SystemModel, type TableSystem } from "./system";

/** One stage in plain numbers: of a held coil, or with the maker's table. */
export type StagePlan = {
  readonly fanW: number;
} & (
  | {
      readonly table: null;
      readonly coil: CoilAtFlow;
      /** The same coil held at its frost limit. */
      readonly atFrost: CoilAtFlow;
      readonly share: number;
      readonly minimumBtuh: number;
    }
  | {
      readonly table: CoolingTable;
      readonly coil: null;
      readonly atFrost: null;
      readonly share: 0;
      readonly minimumBtuh: 0;
    }
);

/**
 * The stages as the loop reads them.
 *
 * @param system - Ranges at {@link SystemModel}.
 * @param room - Air at the cooling setpoint.
 * @returns One plan a stage.
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} as `coilConstants`.
 * @see `coilConstants` (physics); the maker's table.
 */
export function stagePlans(system: SystemModel, room: MoistAir): readonly StagePlan[] {
  if (isHeldCoil(system)) return heldStages(system, room);
  return system.stages.map(
    ({ table, fanW }): StagePlan => ({
      table,
      coil: null,
      atFrost: null,
      share: 0,
      minimumBtuh: 0,
      fanW,
    }),
  );
}

function heldStages(system: HeldCoilSystem, room: MoistAir): readonly StagePlan[] {
  return system.stages.map((stage): StagePlan => {
    const capacityCeilingBtuh = leastCeiling(system, stage.capacitySettingPct);
    const constants = coilConstants({ ...system, ...stage, capacityCeilingBtuh }, room);
    const coil = coilAtFlow(constants, (stage.airflowCfm * 60) / room.specificVolumeFt3PerLb);
    return {
      table: null,
      coil,
      atFrost: { ...coil, heldTemperatureF: coil.frostLimitF, fixedApproachF: 0, approachSlopeFPerBtuh: 0 },
      share: stage.capacitySettingPct / 100,
      minimumBtuh: stage.minimumCapacityBtuh,
      fanW: stage.fanW,
    };
  });
}

/**
 * The full ceiling of a held coil as each hour ends; a table holds its own, so zeros.
 *
 * @param system - Ranges at {@link SystemModel}.
 * @param weather - The job's.
 * @returns Btu/h, one an hour.
 * @throws {@link OutOfRangeError} for an hour hotter than the maker's hottest line.
 * @see The maker's table, straight lines between its points (computed).
 */
export function ceilingByHour(system: SystemModel, weather: Weather): Float64Array {
  if (!isHeldCoil(system)) {
    refuseHotterThanTable(system, weather);
    return new Float64Array(weather.hourCount);
  }
  const coolest = system.ceiling[0]?.outdoorDbF ?? 0;
  return weather.dryBulbF.map((outdoorF) =>
    capacityCeilingBtuh(system.ceiling, Math.max(outdoorF, coolest), 100),
  );
}

function refuseHotterThanTable(system: TableSystem, weather: Weather): void {
  const hottestF = weather.dryBulbF.reduce((most, one) => Math.max(most, one), Number.NEGATIVE_INFINITY);
  for (const { table } of system.stages) {
    const { outdoorDbF } = table;
    requireRange("outdoorDbF", hottestF, "°F", -80, outdoorDbF.at(-1) ?? hottestF);
  }
}

function leastCeiling(system: HeldCoilSystem, settingPct: number): number {
  return Math.min(...system.ceiling.map((point) => (point.capacityBtuh * settingPct) / 100));
}
