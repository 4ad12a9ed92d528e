import { ImpossibleStateError } from "../errors";
import { cfm } from "../units";
import { type MoistAir, moistAir } from "./moist-air";
import { psychrometrics } from "./psychrometrics";
import { requireSamePressure } from "./same-pressure";

/** One stream of air, its flow counted at its own state. */
export type AirStream = { readonly airflowCfm: number; readonly air: MoistAir };

/** Dry air, lb/min. Less than this is no flow, and its arithmetic would lose its digits. */
const LEAST_FLOW = 1e-9;

/**
 * Air that results when streams mix without gaining or losing heat or water.
 *
 * @param streams - At least one with flow; `airflowCfm` 0 to 100,000 cfm at the stream's own state; all at one pressure.
 * @returns The mixed state.
 * @throws {@link OutOfRangeError} for an airflow outside its range.
 * @throws {@link ImpossibleStateError} without any flow, with unequal pressures, or when the mixture would be fog.
 * @see Balance of dry air, water and enthalpy (physics); ASHRAE Handbook, Fundamentals 2017, ch. 1, adiabatic mixing.
 */
export function mixAir(streams: readonly AirStream[]): MoistAir {
  const first = streams[0];
  if (first === undefined) throw new ImpossibleStateError("give at least one stream of air", ["streams"]);

  let dryAir = 0;
  let water = 0;
  let heat = 0;
  for (const { airflowCfm, air } of streams) {
    requireSamePressure(first.air, air, ["streams"]);
    const massFlow = cfm(airflowCfm) / air.specificVolumeFt3PerLb;
    dryAir += massFlow;
    water += massFlow * air.humidityRatio;
    heat += massFlow * air.enthalpyBtuPerLb;
  }
  if (dryAir < LEAST_FLOW) throw new ImpossibleStateError("no stream has any airflow", ["airflowCfm"]);

  const humidityRatio = water / dryAir;
  const dryBulbF = psychrometrics.GetTDryBulbFromEnthalpyAndHumRatio(heat / dryAir, humidityRatio);
  return moistAir({ dryBulbF, pressurePsia: first.air.pressurePsia, humidityRatio });
}
