import type { MoistAir } from "../air";
import { coilAtFlow, solveCoil } from "./coil-core";
import { COIL, coilNumbers } from "./coil-numbers";
import { type CoilState, stateFrom } from "./coil-state";
import { type CoilTemperatureHeldSystem, checkedDryAirLbPerH, coilConstants } from "./coil-system";

/**
 * Steady state of a system whose compressor changes speed to hold an evaporating temperature, so that capacity follows airflow.
 *
 * `h_out = h_in − (1 − BF)(h_in − h_surface)`, `BF = exp(−A0/ṁ)`, surface = held temperature + approach; the surface floats up
 * to meet the capacity ceiling, and down to meet the minimum capacity but never below the frost limit.
 * Less airflow means a colder coil and a lower sensible ratio, but only down to the surface temperature at which the line from
 * the entering air is tangent to saturation; a still colder surface raises the sensible ratio again.
 * Total is the air's enthalpy drop (drain water included); latent is the water at the entering dry bulb, the convention of
 * the rated point. `airSideCapacity` leaves the drain water out and counts sensible heat at the entering humidity ratio: its
 * total is lower by `m·(t_out − 32)`, under 1 %, and its sensible higher by `0.444·m·(t_in − t_out)`, about 0.5 %.
 *
 * @param input - `entering` air 40 to 120 °F, above the frost limit; `airflowCfm` 50 to 20,000 cfm at the entering state;
 * `system` with the ranges stated at {@link CoilTemperatureHeldSystem}.
 * @returns Heat in Btu/h, water in lb/h, temperatures in °F.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @throws {@link ImpossibleStateError} for a minimum above the ceiling, or a frost limit not below the entering air.
 * @see EnergyPlus Engineering Reference for BF and A0 (published); the rest follows from the balances (physics).
 */
export function coilTemperatureHeld(input: {
  readonly entering: MoistAir;
  readonly airflowCfm: number;
  readonly system: CoilTemperatureHeldSystem;
}): CoilState {
  const { entering, system } = input;
  const constants = coilConstants(system, entering);
  const dryAirLbPerH = checkedDryAirLbPerH(input.airflowCfm, entering);
  const out = coilNumbers(entering.pressurePsia);
  out[COIL.enteringDbF] = entering.dryBulbF;
  out[COIL.enteringHumidityRatio] = entering.humidityRatio;
  out[COIL.ceilingBtuh] = system.capacityCeilingBtuh;
  out[COIL.minimumBtuh] = system.minimumCapacityBtuh;
  solveCoil(coilAtFlow(constants, dryAirLbPerH), out);
  return stateFrom(out, constants, entering, dryAirLbPerH);
}
