import { type MoistAir, moistAir } from "../air";
import {
  type Btuh,
  btuh,
  type Fahrenheit,
  fahrenheit,
  type LbPerH,
  lbPerH,
  type Ratio,
  ratio,
} from "../units";
import { COIL, type CoilConstants } from "./coil-numbers";

/** In the order of the codes of `COIL_LIMIT`. */
export const LIMITING = ["held temperature", "capacity ceiling", "minimum capacity", "frost limit"] as const;
export type LimitedBy = (typeof LIMITING)[number];

/** One steady state, in the order an installer asks for it. */
export type CoilState = {
  readonly totalBtuh: Btuh;
  readonly sensibleBtuh: Btuh;
  readonly latentBtuh: Btuh;
  /** `null` when the coil takes no heat. */
  readonly sensibleRatio: Ratio | null;
  readonly moistureLbPerH: LbPerH;
  readonly leavingDbF: Fahrenheit;
  readonly leavingDewPointF: Fahrenheit;
  readonly leavingWbF: Fahrenheit;
  readonly leaving: MoistAir;
  readonly bypassFactor: Ratio;
  /** Apparatus dew point: the coil's effective surface temperature. */
  readonly adpF: Fahrenheit;
  /** The setting. */
  readonly heldTemperatureF: Fahrenheit;
  /** What the refrigerant evaporates at; away from the setting when something else limits. */
  readonly evaporatingTemperatureF: Fahrenheit;
  readonly limitedBy: LimitedBy;
  /** True when even the minimum capacity is too much for a coil at the frost limit. */
  readonly cycling: boolean;
  /** Share of the time the compressor runs, 0 to 1; capacities are means over the cycle. */
  readonly compressorShare: Ratio;
  /** True when the surface is above the entering dew point: it cools and does not dry. */
  readonly dryCoil: boolean;
  readonly dryAirLbPerH: LbPerH;
};

/**
 * Names the numbers of the core's output array.
 *
 * @param dryAirLbPerH - Flow of dry air, lb/h, more than 0.
 * @throws {@link OutOfRangeError} for a number no coil can have.
 */
export function stateFrom(
  out: Float64Array,
  constants: CoilConstants,
  entering: MoistAir,
  dryAirLbPerH: number,
): CoilState {
  const read = (place: number): number => out[place] ?? Number.NaN;
  const totalBtuh = btuh(read(COIL.totalBtuh));
  const sensibleBtuh = btuh(read(COIL.sensibleBtuh));
  const moistureLbPerH = lbPerH(read(COIL.moistureLbPerH));
  const compressorShare = read(COIL.compressorShare);
  const leaving = leavingAir(out, entering);
  const approachF =
    constants.fixedApproachF + (constants.approachSlopeFPerBtuh * totalBtuh) / compressorShare;
  return {
    totalBtuh,
    sensibleBtuh,
    latentBtuh: btuh(totalBtuh - sensibleBtuh),
    sensibleRatio: totalBtuh > 0 ? ratio(sensibleBtuh / totalBtuh) : null,
    moistureLbPerH,
    leavingDbF: leaving.dryBulbF,
    leavingDewPointF: leaving.dewPointF,
    leavingWbF: leaving.wetBulbF,
    leaving,
    bypassFactor: ratio(read(COIL.bypassFactor)),
    adpF: fahrenheit(read(COIL.adpF)),
    heldTemperatureF: fahrenheit(constants.heldTemperatureF),
    evaporatingTemperatureF: fahrenheit(read(COIL.adpF) - approachF),
    limitedBy: LIMITING[out[COIL.limitedBy] as 0 | 1 | 2 | 3],
    cycling: compressorShare < 1,
    compressorShare: ratio(compressorShare),
    dryCoil: moistureLbPerH === 0,
    dryAirLbPerH: lbPerH(dryAirLbPerH),
  };
}

function leavingAir(out: Float64Array, entering: MoistAir): MoistAir {
  const dryBulbF = out[COIL.leavingDbF] ?? Number.NaN;
  const place = { dryBulbF, pressurePsia: entering.pressurePsia };
  // The core's saturation is within 5e-7 of psychrolib's; a fog-free saturated state is therefore stated as such.
  return out[COIL.saturatedLeaving] === 1
    ? moistAir({ ...place, relativeHumidityPct: 100 })
    : moistAir({ ...place, humidityRatio: out[COIL.leavingHumidityRatio] ?? Number.NaN });
}
