import { ImpossibleStateError } from "../errors";
import { type HumidityRatio, quantity } from "../units";
import { LEAST_HUMIDITY_RATIO, psychrometrics } from "./psychrometrics";

type Place = { readonly dryBulbF: number; readonly pressurePsia: number };

/** Dry bulb and pressure, and exactly one measure of the moisture. */
export type MoistAirInput =
  | (Place & { readonly relativeHumidityPct: number })
  | (Place & { readonly wetBulbF: number })
  | (Place & { readonly dewPointF: number })
  | (Place & { readonly humidityRatio: number });

const MOISTURE_FIELDS = ["relativeHumidityPct", "wetBulbF", "dewPointF", "humidityRatio"] as const;

const relativeHumidity = quantity("relativeHumidityPct", "%", 0, 100);
const wetBulb = quantity("wetBulbF", "°F", -100, 200);
const dewPoint = quantity("dewPointF", "°F", -148, 200);
const ratioOfHumidity = quantity("humidityRatio", "lb/lb", LEAST_HUMIDITY_RATIO, 1);

/** What rounding may add above saturation, relative. A measured excess is far larger. */
const ROUNDING = 1e-9;

/** Which measure of the moisture was given. */
export type GivenMoisture = { readonly field: (typeof MOISTURE_FIELDS)[number]; readonly value: number };

/**
 * The one measure of the moisture in the input; refuses none and several.
 *
 * @throws {@link ImpossibleStateError} when no measure or more than one is given.
 */
export function readMoisture(input: MoistAirInput): GivenMoisture {
  const values: { readonly [K in GivenMoisture["field"]]?: number } = input;
  let given: GivenMoisture | null = null;
  for (const field of MOISTURE_FIELDS) {
    const value = values[field];
    if (value === undefined) continue;
    if (given !== null) {
      throw new ImpossibleStateError(`give only one of ${given.field} and ${field}`, [given.field, field]);
    }
    given = { field, value };
  }
  if (given === null) {
    throw new ImpossibleStateError(`give one of ${MOISTURE_FIELDS.join(", ")}`, MOISTURE_FIELDS);
  }
  return given;
}

/**
 * The humidity ratio from whichever measure was given, refusing what contradicts the dry bulb.
 *
 * @param dryBulbF - Dry bulb, °F, −148 to 392.
 * @param pressurePsia - Atmospheric pressure, psia, above the saturation pressure and at most 20.
 * @param saturationPsia - Saturation pressure of water at the dry bulb, psia, more than 0 and below the atmospheric pressure.
 * @returns Humidity ratio, lb/lb.
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for inputs that cannot be, naming the field.
 * @see ASHRAE Handbook, Fundamentals 2017, ch. 1 (published), as psychrolib computes it.
 */
export function humidityRatioFrom(
  given: GivenMoisture,
  dryBulbF: number,
  pressurePsia: number,
  saturationPsia: number,
): HumidityRatio {
  switch (given.field) {
    case "relativeHumidityPct": {
      const vapourPsia = (relativeHumidity(given.value) / 100) * saturationPsia;
      return fromVapourPressure(vapourPsia, pressurePsia, given);
    }
    case "dewPointF": {
      const dewPointF = dewPoint(given.value);
      if (dewPointF > dryBulbF) throw above("dewPointF", dewPointF, dryBulbF);
      return fromVapourPressure(psychrometrics.GetSatVapPres(dewPointF), pressurePsia, given);
    }
    case "wetBulbF": {
      const wetBulbF = wetBulb(given.value);
      if (wetBulbF > dryBulbF) throw above("wetBulbF", wetBulbF, dryBulbF);
      const found = psychrometrics.GetHumRatioFromTWetBulb(dryBulbF, wetBulbF, pressurePsia);
      if (found <= LEAST_HUMIDITY_RATIO) {
        throw new ImpossibleStateError(
          `wetBulbF ${wetBulbF} °F is lower than bone-dry air at dryBulbF ${dryBulbF} °F can reach; check the wick and both readings`,
          ["wetBulbF", "dryBulbF"],
        );
      }
      // A wet bulb not above the dry bulb cannot mean fog; below 0 °F the handbook's rounded ice constants overshoot
      // saturation by up to 0.04 %, so saturation is the answer there.
      return ratioOfHumidity(
        Math.min(found, psychrometrics.GetHumRatioFromVapPres(saturationPsia, pressurePsia)),
      );
    }
    case "humidityRatio":
      return notAboveSaturation(ratioOfHumidity(given.value), pressurePsia, saturationPsia, dryBulbF);
  }
}

/** The humidity ratio of a vapour pressure, refusing what lies outside the model instead of bending it. */
function fromVapourPressure(vapourPsia: number, pressurePsia: number, given: GivenMoisture): HumidityRatio {
  const found = psychrometrics.GetHumRatioFromVapPres(vapourPsia, pressurePsia);
  if (found <= LEAST_HUMIDITY_RATIO) {
    throw new ImpossibleStateError(
      `${given.field} ${given.value} is drier than this model covers (${LEAST_HUMIDITY_RATIO} lb/lb); check the reading`,
      [given.field],
    );
  }
  return ratioOfHumidity(found);
}

function notAboveSaturation(
  humidityRatio: HumidityRatio,
  pressurePsia: number,
  saturationPsia: number,
  dryBulbF: number,
): HumidityRatio {
  const most = psychrometrics.GetHumRatioFromVapPres(saturationPsia, pressurePsia);
  if (humidityRatio <= most * (1 + ROUNDING)) return humidityRatio;
  throw new ImpossibleStateError(
    `humidityRatio ${humidityRatio} lb/lb is above saturation (${most.toFixed(5)}) at dryBulbF ${dryBulbF} °F; check both`,
    ["humidityRatio", "dryBulbF"],
  );
}

function above(field: "wetBulbF" | "dewPointF", value: number, dryBulbF: number): ImpossibleStateError {
  return new ImpossibleStateError(
    `${field} ${value} °F is above dryBulbF ${dryBulbF} °F; check both readings or whether they were swapped`,
    [field, "dryBulbF"],
  );
}
