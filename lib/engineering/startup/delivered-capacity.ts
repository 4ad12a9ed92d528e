import { airSideCapacity, type MoistAir, moistAir, standardPressurePsia } from "@/lib/engineering/air";
import { ImpossibleStateError } from "../errors";
import { type PreparedReadings, prepareReadings } from "./propagate";
import type { Readings } from "./readings";
import { type UncertainValue, withUncertainty } from "./with-uncertainty";

const AIR_READINGS = [
  "airflowCfm",
  "returnDryBulbF",
  "returnWetBulbF",
  "returnRelativeHumidityPct",
  "supplyDryBulbF",
  "supplyWetBulbF",
  "supplyRelativeHumidityPct",
] as const;
export type AirReadingName = (typeof AIR_READINGS)[number];

/** Per side a dry bulb and a wet bulb or relative humidity; when both are given the wet bulb counts. */
export type AirReadings = Pick<Readings, AirReadingName>;

/** What the air side shows was delivered, each number with its uncertainty. Cooling and drying are positive. */
export type DeliveredCapacity = {
  /** Btu/h. */
  readonly totalBtuh: UncertainValue<AirReadingName>;
  readonly sensibleBtuh: UncertainValue<AirReadingName>;
  readonly latentBtuh: UncertainValue<AirReadingName>;
  readonly moistureLbPerH: UncertainValue<AirReadingName>;
  /** `null` when there is no net cooling to split, at the readings or within their uncertainty. */
  readonly sensibleRatio: UncertainValue<AirReadingName> | null;
  readonly returnAir: MoistAir;
  readonly supplyAir: MoistAir;
  /** Readings taken with an instrument of unknown accuracy: the uncertainties leave these out. */
  readonly unknownAccuracy: readonly AirReadingName[];
};

/**
 * Delivered total, sensible and latent capacity and moisture removal from air readings, with their uncertainty.
 *
 * @param input.elevationFt - Site elevation, ft. −2,000 to 20,000; pressure is that of the standard atmosphere.
 * @param input.readings - Airflow in cfm at the return state, dry and wet bulb in °F, relative humidity in %.
 * @param input.systematicShare - Share of an instrument's uncertainty common to all its readings. 0 to 1.
 * @returns Capacities in Btu/h, moisture in lb/h, each with expanded uncertainty; the states of the air.
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} naming the reading.
 * @see `airSideCapacity` for the balance; JCGM 100:2008 for the uncertainty (recalled).
 */
export function deliveredCapacity(input: {
  readonly elevationFt: number;
  readonly readings: AirReadings;
  readonly systematicShare: number;
}): DeliveredCapacity {
  const pressurePsia = standardPressurePsia(input.elevationFt);
  const { inputs, unknownAccuracy } = prepareAirReadings(input.readings, input.systematicShare);
  // The differences move one reading at a time, so most states come again: ten different ones instead of forty-six.
  const states = new Map<string, MoistAir>();
  const stateAt = (side: "return" | "supply", values: AirValues): MoistAir => {
    const moisture = values[`${side}WetBulbF`] ?? values[`${side}RelativeHumidityPct`];
    const key = `${side} ${values[`${side}DryBulbF`]} ${moisture}`;
    const known = states.get(key);
    if (known !== undefined) return known;
    const air = airAt(side, values, pressurePsia);
    states.set(key, air);
    return air;
  };
  const evaluate = (values: AirValues) => {
    const returnAir = stateAt("return", values);
    const supplyAir = stateAt("supply", values);
    const capacity = airSideCapacity({
      airflowCfm: values.airflowCfm ?? Number.NaN,
      entering: returnAir,
      leaving: supplyAir,
    });
    return { returnAir, supplyAir, capacity };
  };
  const results = withUncertainty((values) => {
    const { totalBtuh, sensibleBtuh, latentBtuh, moistureLbPerH } = evaluate(values).capacity;
    return { totalBtuh, sensibleBtuh, latentBtuh, moistureLbPerH };
  }, inputs);
  const { returnAir, supplyAir, capacity } = evaluate(
    Object.fromEntries(Object.entries(inputs).map(([name, { value }]) => [name, value])),
  );
  // A total that could be zero has no meaningful ratio.
  const splits =
    capacity.sensibleRatio !== null && results.totalBtuh.value > results.totalBtuh.expandedUncertainty;
  return {
    ...results,
    sensibleRatio: splits
      ? withUncertainty((values) => evaluate(values).capacity.sensibleRatio ?? noRatio(), inputs)
      : null,
    returnAir,
    supplyAir,
    unknownAccuracy,
  };
}

/**
 * The air readings that count, ready for {@link withUncertainty}.
 *
 * @param systematicShare - Share of an instrument's uncertainty common to all its readings, 0 to 1.
 * @throws {@link OutOfRangeError} for an input outside its range, naming the field.
 */
export function prepareAirReadings(
  readings: AirReadings,
  systematicShare: number,
): PreparedReadings<AirReadingName> {
  return prepareReadings(
    readings,
    [
      "airflowCfm",
      "returnDryBulbF",
      moistureName(readings, "return"),
      "supplyDryBulbF",
      moistureName(readings, "supply"),
    ],
    systematicShare,
  );
}

type AirValues = Readonly<Partial<Record<AirReadingName, number>>>;

/** The moisture reading that counts on one side: the wet bulb when it is there. */
export function moistureName(readings: AirReadings, side: "return" | "supply"): AirReadingName {
  const wetBulb = `${side}WetBulbF` as const;
  const relativeHumidity = `${side}RelativeHumidityPct` as const;
  return readings[wetBulb] === null && readings[relativeHumidity] !== null ? relativeHumidity : wetBulb;
}

/**
 * The state of return or supply air from the values of the readings.
 *
 * @param values - Dry bulb and wet bulb in °F, relative humidity in %; ranges at `moistAir`.
 * @param pressurePsia - Atmospheric pressure, psia, 6 to 17.
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for inputs that cannot be, naming the field.
 */
export function airAt(side: "return" | "supply", values: AirValues, pressurePsia: number): MoistAir {
  const place = { dryBulbF: values[`${side}DryBulbF`] ?? Number.NaN, pressurePsia };
  const wetBulbF = values[`${side}WetBulbF`];
  if (wetBulbF === undefined) {
    const relativeHumidityPct = values[`${side}RelativeHumidityPct`] ?? Number.NaN;
    return moistAir({ ...place, relativeHumidityPct });
  }
  if (wetBulbF > place.dryBulbF) {
    throw new ImpossibleStateError(
      `The ${side} wet bulb ${wetBulbF} °F is above the dry bulb ${place.dryBulbF} °F; check whether the two were swapped.`,
      [`${side}WetBulbF`, `${side}DryBulbF`],
    );
  }
  return moistAir({ ...place, wetBulbF });
}

function noRatio(): never {
  throw new ImpossibleStateError("There is no net cooling to split.", [...AIR_READINGS]);
}
