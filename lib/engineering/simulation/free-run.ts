import { VAPOUR_SPECIFIC_HEAT } from "../air/vapour-enthalpy";
import { type HouseModel, leakageSquares } from "./house";
import type { HouseLog } from "./house-log";

/** Dry air's gas constant, as in the year's loop. */
const GAS = 0.370486;

/**
 * The rooms of the year's model, carried along by a log instead of a thermostat: the same balances of heat and water by the trapezoid
 * rule, from the measured state, which mass and furnishings are taken to share, at
 * each sample that begins anew.
 *
 * @param house - Checked by `requireHouse`.
 * @param log - Columns of one length; °F −60 to 140, lb/lb 0 to 0.05.
 * @param roomF - Receives the rooms' temperature as each sample ends, °F.
 * @param roomRatio - Receives their humidity ratio, lb/lb.
 * @throws {@link OutOfRangeError} for a storey or shelter class that is none.
 * @see Balances at `simulateYear` (physics).
 */
export function freeRun(
  house: HouseModel,
  log: HouseLog,
  roomF: Float64Array,
  roomRatio: Float64Array,
): void {
  const h = log.intervalMin / 60;
  const { stackCfm2PerF: stack, windCfm2PerMph2: windy } = leakageSquares(house);
  const coupling = house.massCouplingBtuhPerF;
  const air2 = (2 * house.airCapacitanceBtuPerF) / h;
  const mass2 = (2 * house.massCapacitanceBtuPerF) / h;
  const massRow = mass2 + coupling;
  const airLb = (house.volumeFt3 * log.pressurePsia) / (GAS * (75 + 459.67));
  const bufferLb = Math.max(airLb * (house.moistureCapacitanceMultiple - 1), 1);
  const exchange = (airLb * (house.moistureCapacitanceMultiple - 1)) / house.moistureExchangeH;
  const water2 = (2 * airLb) / h;
  const buffer2 = (2 * bufferLb) / h;
  const bufferRow = buffer2 + exchange;
  const at = (column: Float64Array, index: number): number => column[index] ?? Number.NaN;
  let airF = 0;
  let massF = 0;
  let ratio = 0;
  let bufferRatio = 0;
  for (let index = 0; index < log.indoorF.length; index++) {
    if (log.startsAnew[index] === 1) {
      airF = at(log.indoorF, index);
      massF = airF;
      ratio = at(log.indoorRatio, index);
      bufferRatio = ratio;
      roomF[index] = airF;
      roomRatio[index] = ratio;
      continue;
    }
    const outF = at(log.outdoorF, index);
    const outRatio = at(log.outdoorRatio, index);
    const wind = at(log.windMph, index);
    const cfm =
      Math.sqrt(stack * Math.abs(airF - outF) + windy * wind * wind) + at(log.ventilationCfm, index);
    const outLb = (cfm * 60 * log.pressurePsia) / (GAS * (outF + 459.67) * (1 + 1.607858 * outRatio));
    const hour = log.clockHour[index] ?? 0;
    const gained = at(log.sunBtuh, index) + (house.gainsBtuhByHour[hour] ?? 0);
    const radiant = gained * house.radiantShare;
    const conductance = house.conductanceBtuhPerF + outLb * (0.24 + VAPOUR_SPECIFIC_HEAT * outRatio);
    const airRight = air2 * airF + gained - radiant - at(log.cooledBtuh, index) + conductance * outF;
    const massRight = mass2 * massF + radiant;
    const determinant = (air2 + conductance + coupling) * massRow - coupling * coupling;
    const meanF = (airRight * massRow + coupling * massRight) / determinant;
    massF = (2 * (massRight + coupling * meanF)) / massRow - massF;
    airF = 2 * meanF - airF;
    const source = (house.moistureLbPerHByHour[hour] ?? 0) - at(log.driedLbPerH, index);
    const meanRatio =
      ((water2 * ratio + source + outLb * outRatio) * bufferRow + exchange * buffer2 * bufferRatio) /
      ((water2 + outLb + exchange) * bufferRow - exchange * exchange);
    bufferRatio = (2 * (buffer2 * bufferRatio + exchange * meanRatio)) / bufferRow - bufferRatio;
    ratio = 2 * meanRatio - ratio;
    roomF[index] = airF;
    roomRatio[index] = ratio;
  }
}
