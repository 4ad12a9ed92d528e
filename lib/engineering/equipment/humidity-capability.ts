import { moistAir } from "../air";
import { type Percent, percent, type Ratio, ratio, requireRange } from "../units";
import type { CoilState } from "./coil-state";
import type { CoilTemperatureHeldSystem } from "./coil-system";
import { coilTemperatureHeld } from "./coil-temperature-held";

export type HumidityCapability =
  | {
      readonly outcome: "holds";
      /** Lowest indoor relative humidity the option settles at under these loads. */
      readonly relativeHumidityPct: Percent;
      /** Share of the time the system runs to carry the sensible load. */
      readonly runShare: Ratio;
      /** The coil at that indoor state. */
      readonly state: CoilState;
    }
  | {
      /** Running all the time it cannot carry the sensible load at the humidity it would settle at. */
      readonly outcome: "sensible load not carried";
      readonly relativeHumidityPct: Percent;
      readonly state: CoilState;
    }
  | {
      /** Even at 99 % indoor RH it removes less water than comes in. */
      readonly outcome: "latent load not carried";
      readonly state: CoilState;
    };

const DRIEST_PCT = 1;
const WETTEST_PCT = 99;
const TOLERANCE_PCT = 1e-6;

/**
 * Lowest indoor relative humidity an option can hold without reheat.
 *
 * The thermostat runs the system just long enough for the sensible load; the humidity settles where the water removed in
 * that time equals the latent load, that is where the coil's latent over sensible equals the load's. Solved by halving
 * between 1 and 99 % RH to 1e-6 %, as the coil has no closed form. Counts steady running: water that dries back off the coil
 * between calls (`latentRatio` of the moisture folder) makes the house wetter than this.
 *
 * @param input - `indoorDbF` 60 to 90 °F; `pressurePsia` 6 to 17; `airflowCfm` and `system` as `coilTemperatureHeld`;
 * `sensibleLoadBtuh` 100 to 1,000,000; `latentLoadBtuh` 0 to 500,000.
 * @returns The humidity, the share of running time and the coil's state; or what is not carried.
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} as `coilTemperatureHeld`.
 * @see Balance of heat and water (physics).
 */
export function humidityCapability(input: {
  readonly indoorDbF: number;
  readonly pressurePsia: number;
  readonly airflowCfm: number;
  readonly system: CoilTemperatureHeldSystem;
  readonly sensibleLoadBtuh: number;
  readonly latentLoadBtuh: number;
}): HumidityCapability {
  const dryBulbF = requireRange("indoorDbF", input.indoorDbF, "°F", 60, 90);
  const sensibleLoad = requireRange("sensibleLoadBtuh", input.sensibleLoadBtuh, "Btu/h", 100, 1e6);
  const latentLoad = requireRange("latentLoadBtuh", input.latentLoadBtuh, "Btu/h", 0, 5e5);
  const stateAt = (relativeHumidityPct: number): CoilState =>
    coilTemperatureHeld({
      entering: moistAir({ dryBulbF, pressurePsia: input.pressurePsia, relativeHumidityPct }),
      airflowCfm: input.airflowCfm,
      system: input.system,
    });
  /** True where the house would be drying. Products, not quotients: a coil may do no sensible work. */
  const dries = (state: CoilState): boolean =>
    state.latentBtuh * sensibleLoad > latentLoad * state.sensibleBtuh;

  const wettest = stateAt(WETTEST_PCT);
  if (!dries(wettest)) return { outcome: "latent load not carried", state: wettest };
  let low = DRIEST_PCT;
  let high = WETTEST_PCT;
  while (high - low > TOLERANCE_PCT) {
    const middle = (low + high) / 2;
    if (dries(stateAt(middle))) high = middle;
    else low = middle;
  }
  const state = stateAt(high);
  const relativeHumidityPct = percent(high);
  if (state.sensibleBtuh < sensibleLoad) {
    return { outcome: "sensible load not carried", relativeHumidityPct, state };
  }
  return {
    outcome: "holds",
    relativeHumidityPct,
    runShare: ratio(sensibleLoad / state.sensibleBtuh),
    state,
  };
}
