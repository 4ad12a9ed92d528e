import { moistAir, QUICK_SENSIBLE_FACTOR, SEA_LEVEL_PRESSURE_PSIA } from "../air";
import { vapourEnthalpyBtuPerLb } from "../air/vapour-enthalpy";
import { COIL, COIL_LIMIT, coilFromRating, type PerformancePoint, performanceAt } from "../equipment";
import { OutOfRangeError } from "../errors";

/*
 * Equipment whose maker prints what it gives: a grid over outdoor temperature, entering wet bulb and entering dry bulb at the stage's own
 * airflow, so that the minute loop only looks up. Plain lists, so that a worker can be sent it.
 */

/** Capacity at one airflow. Values by outdoor temperature, then wet bulb, then dry bulb; each axis rises. */
export type CoolingTable = {
  readonly outdoorDbF: readonly number[];
  readonly enteringWbF: readonly number[];
  readonly enteringDbF: readonly number[];
  readonly totalBtuh: readonly number[];
  readonly sensibleBtuh: readonly number[];
};

/**
 * A maker's table cut down to one airflow.
 *
 * @param lines - The maker's expanded cooling data of one stage; ranges at `performanceAt`.
 * @param airflowCfm - 50 to 20,000 cfm, inside the table.
 * @returns The grid. With one dry bulb in the table a second follows from the coil itself: at a steady coil the sensible capacity changes by
 * 1.08·cfm·(1 − bypass factor) a °F.
 * @throws {@link OutOfRangeError} when the airflow lies outside the table, or a condition is asked for that it leaves out.
 * @throws {@link ImpossibleStateError} as `performanceAt`; or when the table has one dry bulb and no wet coil to tell the bypass factor from.
 * @see The maker's table; multilinear interpolation (computed); bypass factor of the EnergyPlus Engineering Reference (published).
 */
export function coolingTableAt(lines: readonly PerformancePoint[], airflowCfm: number): CoolingTable {
  const values = (axis: "outdoorDbF" | "enteringWbF" | "enteringDbF"): readonly number[] =>
    [...new Set(lines.map((line) => line[axis]))].sort((a, b) => a - b);
  const outdoors = values("outdoorDbF");
  const wetBulbs = values("enteringWbF");
  const printed = values("enteringDbF");
  const only = printed.length === 1 ? (printed[0] ?? 80) : null;
  const dryBulbs = only === null ? printed : [only - 5, only];
  const totalBtuh: number[] = [];
  const sensibleBtuh: number[] = [];
  for (const outdoorDbF of outdoors) {
    const perDegree = only === null ? 0 : sensiblePerDegree(lines, outdoorDbF, airflowCfm, only);
    for (const enteringWbF of wetBulbs) {
      const given = printed.flatMap((enteringDbF) => {
        if (enteringWbF > enteringDbF) return [];
        const found = performanceAt(lines, { outdoorDbF, enteringWbF, enteringDbF, airflowCfm });
        return [{ enteringDbF, total: found.totalBtuh as number, sensible: found.sensibleBtuh as number }];
      });
      const warmest = given.at(-1);
      if (warmest === undefined) {
        throw new OutOfRangeError("enteringWbF", enteringWbF, "°F", wetBulbs[0] ?? 0, printed.at(-1) ?? 0);
      }
      const coolest = given[0] ?? warmest;
      for (const enteringDbF of dryBulbs) {
        const own = given.find((one) => one.enteringDbF === enteringDbF);
        // A wet bulb above the dry bulb cannot be printed; the place is filled from the coolest line and never asked for alone.
        totalBtuh.push((own ?? coolest).total);
        sensibleBtuh.push(
          own?.sensible ?? coolest.sensible - perDegree * (coolest.enteringDbF - enteringDbF),
        );
      }
    }
  }
  return { outdoorDbF: outdoors, enteringWbF: wetBulbs, enteringDbF: dryBulbs, totalBtuh, sensibleBtuh };
}

function sensiblePerDegree(
  lines: readonly PerformancePoint[],
  outdoorDbF: number,
  airflowCfm: number,
  enteringDbF: number,
): number {
  const wettestF = Math.max(...lines.map((line) => line.enteringWbF));
  const at = performanceAt(lines, { outdoorDbF, enteringWbF: wettestF, enteringDbF, airflowCfm });
  const coil = coilFromRating({
    entering: moistAir({ dryBulbF: enteringDbF, wetBulbF: wettestF, pressurePsia: SEA_LEVEL_PRESSURE_PSIA }),
    airflowCfm,
    totalBtuh: at.totalBtuh,
    sensibleRatio: at.sensibleRatio,
  });
  return QUICK_SENSIBLE_FACTOR * airflowCfm * (1 - coil.bypassFactor);
}

/**
 * Capacity from the grid, for the minute loop: no checks, no allocation. Below the coolest outdoor temperature and outside the wet bulbs the
 * total stays; below the lowest wet bulb the sensible part goes on along its line up to the total, as a drying coil's does; on the dry-bulb
 * axis the line goes on, for at a steady coil it is straight.
 *
 * @param table - From {@link coolingTableAt}.
 * @param numbers - Holds `outdoorDbF` (−80 °F to the hottest line: the year's plan refuses what is above), `enteringDbF` (40 to 120 °F) and,
 * as `solvedF`, the entering wet bulb (20 to 100 °F); receives total, sensible, water and, as `limitedBy`, the ceiling: a table is always all
 * there is.
 * @see Multilinear interpolation (computed); what lies outside the table: common practice, no source.
 */
export function lookUpCooling(table: CoolingTable, numbers: Float64Array): void {
  const { outdoorDbF, enteringWbF, enteringDbF, totalBtuh, sensibleBtuh } = table;
  const outdoorF = numbers[COIL.outdoorDbF] ?? 0;
  const wetBulbF = numbers[COIL.solvedF] ?? 0;
  const dryBulbF = numbers[COIL.enteringDbF] ?? 0;
  const wets = enteringWbF.length;
  const dries = enteringDbF.length;
  const o = placeOn(outdoorDbF, outdoorF);
  const w = placeOn(enteringWbF, wetBulbF);
  const d = placeOn(enteringDbF, dryBulbF);
  const os = Math.min(1, Math.max(0, shareOn(outdoorDbF, o, outdoorF)));
  const wet = shareOn(enteringWbF, w, wetBulbF);
  const within = Math.min(1, Math.max(0, wet));
  const onLine = Math.min(1, wet);
  const ds = shareOn(enteringDbF, d, dryBulbF);
  const dWithin = Math.min(1, Math.max(0, ds));
  let total = 0;
  let sensible = 0;
  for (let i = 0; i < 2; i++) {
    const oWeight = i === 0 ? 1 - os : os;
    const oPlace = Math.min(o + i, outdoorDbF.length - 1);
    for (let j = 0; j < 2; j++) {
      const lower = (oPlace * wets + Math.min(w + j, wets - 1)) * dries + d;
      const upper = Math.min(d + 1, dries - 1) - d + lower;
      const totalLower = totalBtuh[lower] ?? 0;
      total +=
        oWeight *
        (j === 0 ? 1 - within : within) *
        (totalLower + dWithin * ((totalBtuh[upper] ?? 0) - totalLower));
      const sensibleLower = sensibleBtuh[lower] ?? 0;
      sensible +=
        oWeight *
        (j === 0 ? 1 - onLine : onLine) *
        (sensibleLower + ds * ((sensibleBtuh[upper] ?? 0) - sensibleLower));
    }
  }
  if (sensible > total) sensible = total;
  if (sensible < 0) sensible = 0;
  numbers[COIL.totalBtuh] = total;
  numbers[COIL.sensibleBtuh] = sensible;
  numbers[COIL.moistureLbPerH] = (total - sensible) / vapourEnthalpyBtuPerLb(dryBulbF);
  numbers[COIL.limitedBy] = COIL_LIMIT.ceiling;
}

/** Place of the interval a value lies in, or of the nearest one. */
function placeOn(axis: readonly number[], value: number): number {
  let place = 0;
  while (place < axis.length - 2 && value >= (axis[place + 1] ?? 0)) place++;
  return place;
}

/** Where on that interval: below 0 and above 1 outside the axis; 0 on an axis of one value. */
function shareOn(axis: readonly number[], place: number, value: number): number {
  const from = axis[place] ?? 0;
  const to = axis[place + 1] ?? from;
  return to > from ? (value - from) / (to - from) : 0;
}
