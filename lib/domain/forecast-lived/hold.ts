import { isEngineeringError } from "@/lib/engineering/errors";
import type { LogSamples } from "@/lib/engineering/logs";
import {
  type ForecastHouse,
  type ForecastOption,
  fittedHouse,
  type HouseModel,
  houseFromLoadSummary,
  houseMembers,
} from "@/lib/engineering/simulation";
import { memberWeather } from "@/lib/engineering/simulation/house-members";
import type { Weather } from "@/lib/engineering/weather";
import { comparer } from "./compare-spans";
import { fitPicture } from "./fit-picture";
import { FITS, fitToLog, type LogFit } from "./fit-to-log";
import { type HouseLogAnswer, houseLogOf } from "./house-log";
import type { AssumptionTried, ForecastLived } from "./kept";
import { logSpan, logWeather } from "./log-weather";
import { yearRange } from "./year-range";

/** Houses the forecast is told for, the central one among them; the year as a whole with fewer. */
const MEMBERS = 10;
const YEAR_MEMBERS = 4;
const SEED = 1;

/** Everything it follows from. */
export type HoldInput = {
  readonly importId: string;
  readonly samples: LogSamples;
  readonly elevationFt: number;
  readonly house: ForecastHouse;
  /** The system as the records say it is set. */
  readonly option: ForecastOption;
  readonly weather: Weather;
  readonly weatherName: string;
  readonly humidityLimitPct: number;
};

/** How far it is, in steps of less than a second. */
export type Held = { readonly done: number; readonly total: number };

/**
 * Holds a forecast against a log: the same hours in the log's own weather for the house as assumed and for what it may be, then with one
 * assumption at a time put to its ends, then with the house fitted to the log. A generator, so that whoever runs it may show how far it is,
 * and stop.
 *
 * @throws OutOfRangeError or ImpossibleStateError when the central house cannot be run with the system.
 */
export function* holdAgainstLog(input: HoldInput): Generator<Held, ForecastLived, void> {
  const { samples, option, weather, humidityLimitPct, elevationFt } = input;
  const inLog = logWeather(samples, weather, elevationFt);
  const ensemble = houseMembers(input.house, weather, MEMBERS, SEED);
  const houses = ensemble.members.flatMap((member) =>
    member.house === null
      ? []
      : [{ house: member.house, weather: inLog?.weather ?? memberWeather(member, weather) }],
  );
  const central = houses[0];
  if (central === undefined) throw new Error("A forecast has a central house.");
  const { system, controls, ventilation, dehumidifier } = option;
  const base = { system, controls, ventilation, dehumidifier, humidityLimitPct };
  const answer: HouseLogAnswer = houseLogOf(samples, { ...base, house: central.house, weather }, elevationFt);
  const tried = endsOf(
    input.house,
    ensemble.uncertain.map(({ name }) => name),
  );
  const steps = {
    done: 0,
    total: MEMBERS + 2 * tried.length + (answer.ok ? FITS + MEMBERS + 2 * YEAR_MEMBERS : 0),
  };
  const step = (): Held => ({ total: steps.total, done: ++steps.done });

  const { firstHour, firstMs, hours } = inLog ?? logSpan(samples, weather);
  const compare = comparer(input, { firstHour, firstMs, hours, own: inLog?.own ?? null });
  const forecast = compare.gathering();
  for (const one of houses) {
    forecast.add({ ...base, ...one });
    yield step();
  }

  const assumptions: AssumptionTried[] = [];
  for (const name of tried) {
    const at = ensemble.uncertain.find((one) => one.name === name);
    if (at === undefined) continue;
    const ends: number[] = [];
    for (const end of [at.low, at.high]) {
      const house = houseAt(input.house, weather, name, end);
      ends.push(
        house === null ? Number.NaN : compare.hoursAbove({ ...base, house, weather: central.weather }),
      );
      yield step();
    }
    const [hoursAtLow = Number.NaN, hoursAtHigh = Number.NaN] = ends;
    if (!ends.every(Number.isFinite)) continue;
    const { unit, low, value, high } = at;
    assumptions.push({ name, unit, low, value, high, hoursAtLow, hoursAtHigh });
  }

  const found = answer.ok ? yield* fitted(central.house, answer, step) : null;
  const fit = found !== null && "factors" in found ? found : null;
  const again = compare.gathering();
  let year: ForecastLived["year"] = null;
  if (fit !== null && answer.ok) {
    const asFitted = fittedHouse(central.house, fit.uncertain);
    for (const member of houseMembers(asFitted, weather, MEMBERS, SEED).members) {
      if (member.house !== null) again.add({ ...base, house: member.house, weather: answer.weather.weather });
      yield step();
    }
    const yearOf = { option, weather, humidityLimitPct, members: YEAR_MEMBERS, seed: SEED };
    const assumed = yield* yearRange({ ...yearOf, house: input.house }, step);
    year = { assumed, fitted: yield* yearRange({ ...yearOf, house: asFitted }, step) };
  }
  return {
    importId: input.importId,
    humidityLimitPct,
    weather: inLog === null ? "typical year" : "the log's own",
    weatherName: input.weatherName,
    firstAt: new Date(samples.timeMs[0] ?? 0).toISOString(),
    lastAt: new Date(samples.timeMs.at(-1) ?? 0).toISOString(),
    hours: compare.hours,
    members: houses.length,
    lived: compare.lived,
    forecast: forecast.figures(),
    fitted: fit === null ? null : again.figures(),
    months: compare.months(forecast, fit === null ? null : again),
    assumptions,
    year,
    fit,
    fitNotes: !answer.ok
      ? answer.missing
      : found !== null && "problem" in found
        ? [found.problem]
        : answer.notes,
    picture: fit === null || !answer.ok ? null : fitPicture(central.house, fit.factors, answer, elevationFt),
  };
}

/** The fit, or why this log is not enough for one. */
function* fitted(
  house: HouseModel,
  answer: Extract<HouseLogAnswer, { ok: true }>,
  step: () => Held,
): Generator<Held, LogFit | { readonly problem: string }, void> {
  try {
    const fits = fitToLog(house, answer.log);
    for (let one = fits.next(); ; one = fits.next()) {
      if (one.done) return one.value;
      yield step();
    }
  } catch (error) {
    if (!isEngineeringError(error)) throw error;
    return { problem: error.message };
  }
}

/** The uncertain numbers of the house itself: the weather is the log's. */
function endsOf(house: ForecastHouse, names: readonly string[]): readonly string[] {
  return house.kind === "load summary" ? names.filter((name) => !name.startsWith("year")) : [];
}

/** The house with one assumption put otherwise; `null` where that contradicts the load summary. */
function houseAt(house: ForecastHouse, weather: Weather, name: string, value: number): HouseModel | null {
  if (house.kind !== "load summary") return null;
  try {
    return houseFromLoadSummary(house.load, weather, { ...house.changed, [name]: value }).house;
  } catch (error) {
    if (!isEngineeringError(error)) throw error;
    return null;
  }
}
