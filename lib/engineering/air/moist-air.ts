import { ImpossibleStateError } from "../errors";
import {
  type BtuPerLb,
  btuPerLb,
  type Fahrenheit,
  type Ft3PerLb,
  ft3PerLb,
  type GrainsPerLb,
  type HumidityRatio,
  type Percent,
  type Psia,
  quantity,
} from "../units";
import { GRAINS_PER_POUND, LEAST_HUMIDITY_RATIO, psychrometrics } from "./psychrometrics";
import { solveWetBulbF } from "./wet-bulb";

/** Everything usually asked about moist air, per pound of dry air. */
export type MoistAir = {
  readonly dryBulbF: Fahrenheit;
  readonly pressurePsia: Psia;
  readonly humidityRatio: HumidityRatio;
  readonly grainsPerLb: GrainsPerLb;
  readonly relativeHumidityPct: Percent;
  readonly wetBulbF: Fahrenheit;
  /** Frost point below 32 °F. */
  readonly dewPointF: Fahrenheit;
  readonly enthalpyBtuPerLb: BtuPerLb;
  readonly specificVolumeFt3PerLb: Ft3PerLb;
};

type Place = { readonly dryBulbF: number; readonly pressurePsia: number };

/** Dry bulb and pressure, and exactly one measure of the moisture. */
export type MoistAirInput =
  | (Place & { readonly relativeHumidityPct: number })
  | (Place & { readonly wetBulbF: number })
  | (Place & { readonly dewPointF: number })
  | (Place & { readonly humidityRatio: number });

const MOISTURE_FIELDS = ["relativeHumidityPct", "wetBulbF", "dewPointF", "humidityRatio"] as const;

const dryBulb = quantity("dryBulbF", "°F", -100, 200);
const sitePressure = quantity("pressurePsia", "psia", 6, 17);
const relativeHumidity = quantity("relativeHumidityPct", "%", 0, 100);
const wetBulb = quantity("wetBulbF", "°F", -100, 200);
const dewPoint = quantity("dewPointF", "°F", -148, 200);
const saturationTemp = quantity("tempF", "°F", -148, 392);
const ratioOfHumidity = quantity("humidityRatio", "lb/lb", LEAST_HUMIDITY_RATIO, 1);

/** What rounding may add above saturation, relative. A measured excess is far larger. */
const ROUNDING = 1e-9;

/**
 * The full state of moist air from dry bulb, pressure and one measure of its moisture.
 *
 * Ideal-gas equations: humidity ratio sits up to about 0.5 % below real air near saturation.
 * Below 32 °F the dew point is a frost point and the wet bulb an iced bulb.
 *
 * @param input - `dryBulbF` −100 to 200 °F; `pressurePsia` 6 to 17 psia; and exactly one of
 * `relativeHumidityPct` (above 0 to 100 %), `wetBulbF` (°F), `dewPointF` (−148 °F up) or `humidityRatio` (1e-7 to 1 lb/lb).
 * @returns The state. Whatever was given comes back unchanged.
 * @throws {@link OutOfRangeError} outside those ranges, or for air drier than 1e-7 lb/lb.
 * @throws {@link ImpossibleStateError} when the fields contradict each other: a wet bulb or dew point above the dry bulb,
 * more water than saturated air holds, a wet bulb below that of bone-dry air, none or several moisture measures.
 * @see ASHRAE Handbook, Fundamentals 2017, ch. 1 (published), through psychrolib.
 */
export function moistAir(input: MoistAirInput): MoistAir {
  const dryBulbF = dryBulb(input.dryBulbF);
  const pressurePsia = sitePressure(input.pressurePsia);
  const given = readMoisture(input);
  const saturationPsia = psychrometrics.GetSatVapPres(dryBulbF);
  if (saturationPsia >= pressurePsia) {
    throw new ImpossibleStateError(
      `dryBulbF ${dryBulbF} °F is above the boiling point of water at pressurePsia ${pressurePsia} psia; check both`,
      ["dryBulbF", "pressurePsia"],
    );
  }

  const humidityRatio = humidityRatioFrom(given, dryBulbF, pressurePsia, saturationPsia);
  const vapourPsia = psychrometrics.GetVapPresFromHumRatio(humidityRatio, pressurePsia);
  const relativeHumidityPct =
    given.field === "relativeHumidityPct" ? given.value : Math.min((100 * vapourPsia) / saturationPsia, 100);
  const dewPointF =
    given.field === "dewPointF"
      ? given.value
      : psychrometrics.GetTDewPointFromVapPres(dryBulbF, Math.min(vapourPsia, saturationPsia));
  const wetBulbF =
    given.field === "wetBulbF"
      ? given.value
      : solveWetBulbF(dryBulbF, dewPointF, humidityRatio, pressurePsia);

  return {
    dryBulbF,
    pressurePsia,
    humidityRatio,
    grainsPerLb: (humidityRatio * GRAINS_PER_POUND) as GrainsPerLb,
    relativeHumidityPct: relativeHumidityPct as Percent,
    wetBulbF: wetBulbF as Fahrenheit,
    dewPointF: dewPointF as Fahrenheit,
    enthalpyBtuPerLb: btuPerLb(psychrometrics.GetMoistAirEnthalpy(dryBulbF, humidityRatio)),
    specificVolumeFt3PerLb: ft3PerLb(psychrometrics.GetMoistAirVolume(dryBulbF, humidityRatio, pressurePsia)),
  };
}

/**
 * Pressure of water vapour over liquid water or, below 32.018 °F, ice.
 *
 * @param tempF - Temperature, °F. −148 to 392.
 * @returns Saturation pressure, psia.
 * @throws {@link OutOfRangeError} outside that range.
 * @see ASHRAE Handbook, Fundamentals 2017, ch. 1 eq. 5 and 6, table 3 (published).
 */
export function waterSaturationPressurePsia(tempF: number): Psia {
  return psychrometrics.GetSatVapPres(saturationTemp(tempF)) as Psia;
}

type GivenMoisture = { readonly field: (typeof MOISTURE_FIELDS)[number]; readonly value: number };

function readMoisture(input: MoistAirInput): GivenMoisture {
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

function humidityRatioFrom(
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
