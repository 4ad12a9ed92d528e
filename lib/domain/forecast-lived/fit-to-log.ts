import { fitHouseToLog, type HouseFit, type HouseLog, type HouseModel } from "@/lib/engineering/simulation";

/*
 * The fit with what no log holds varied: wind and sun are only known as usual for the season, and a fit that took them for measured would
 * be too sure of its leakage.
 */

export type LogFit = Omit<HouseFit, "house">;

/**
 * How far the wind about a house may lie from the station's, the light from the usual, and how much windier moist air may be than dry: a
 * wind that comes with moist air makes a house look leakier and its inside drier. Common practice, no source.
 */
const UNMEASURED: readonly ((log: HouseLog) => Partial<HouseLog>)[] = [
  (log) => ({ windMph: log.windMph.map((wind) => 0.7 * wind) }),
  (log) => ({ windMph: log.windMph.map((wind) => 1.4 * wind) }),
  (log) => ({ windMph: leaned(log, 0.4) }),
  (log) => ({ windMph: leaned(log, -0.4) }),
  (log) => ({ sunBtuh: log.sunBtuh.map((sun) => 0.8 * sun) }),
  (log) => ({ sunBtuh: log.sunBtuh.map((sun) => 1.2 * sun) }),
];

/** Fits one `fitToLog` does, for its progress. */
export const FITS = 1 + UNMEASURED.length;

/**
 * Fits the house, then again with wind and sun otherwise, and answers the first fit's factors with the range of all of them. A generator of
 * fits done, so that whoever runs it may show progress and stop.
 *
 * @throws OutOfRangeError or ImpossibleStateError as `fitHouseToLog`.
 */
export function* fitToLog(house: HouseModel, log: HouseLog): Generator<number, LogFit, void> {
  const { house: _, ...first } = fitHouseToLog(house, log);
  yield 1;
  const others: HouseFit[] = [];
  for (const otherwise of UNMEASURED) {
    others.push(fitHouseToLog(house, { ...log, ...otherwise(log) }));
    yield 1 + others.length;
  }
  return {
    ...first,
    uncertain: first.uncertain.map((one) => {
      const all = [one, ...others.flatMap((fit) => fit.uncertain.filter(({ name }) => name === one.name))];
      return {
        ...one,
        low: Math.min(...all.map(({ low }) => low)),
        high: Math.max(...all.map(({ high }) => high)),
        why: "fitted to the log; two standard errors either way, and what wind and sun, which no log holds, leave open",
      };
    }),
  };
}

/** Wind that is stronger (or weaker) by a share for each standard deviation the outdoors are moister than usual. */
function leaned({ windMph, outdoorRatio }: HouseLog, share: number): Float64Array {
  const count = outdoorRatio.length;
  const mean = outdoorRatio.reduce((sum, one) => sum + one, 0) / count;
  const spread = Math.sqrt(outdoorRatio.reduce((sum, one) => sum + (one - mean) ** 2, 0) / count);
  if (spread === 0) return windMph;
  return windMph.map((wind, place) => {
    const off = ((outdoorRatio[place] ?? mean) - mean) / spread;
    return wind * (1 + share * Math.max(-2, Math.min(2, off)));
  });
}
