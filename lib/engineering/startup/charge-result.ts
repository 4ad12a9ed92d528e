import { standardPressurePsia } from "@/lib/engineering/air";
import {
  absolutePressurePsia,
  saturationTempUncertaintyF,
  subcoolingF,
  superheatF,
} from "@/lib/engineering/refrigerant";
import type { Result } from "./judged";
import { prepareReadings } from "./propagate";
import type { ReadingName } from "./readings";
import type { StageCheck } from "./stage-check";
import { COVERAGE_FACTOR, withUncertainty } from "./with-uncertainty";

export type ChargeKind = "superheat" | "subcooling";

/** Pressure and line temperature each rests on. */
export const CHARGE_READINGS = {
  superheat: ["suctionPressurePsig", "suctionLineF"],
  subcooling: ["liquidPressurePsig", "liquidLineF"],
} as const satisfies Record<ChargeKind, readonly [ReadingName, ReadingName]>;

/** The saturation table is one more input: an offset of 0 °F with its own uncertainty. */
const TABLE = "saturationTable";

/**
 * Superheat or subcooling with its uncertainty from gauge, probe and saturation table; `null` while something is missing.
 *
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for inputs that cannot be, naming the field.
 */
export function chargeResult({ values, site, limits }: StageCheck, kind: ChargeKind): Result | null {
  const { refrigerant, elevationFt } = site;
  const [pressureName, lineName] = CHARGE_READINGS[kind];
  const { [pressureName]: pressure, [lineName]: line } = values.readings;
  if (refrigerant === null || elevationFt === null || pressure === null || line === null) return null;
  const sitePressurePsia = standardPressurePsia(elevationFt);
  const place = { refrigerant, sitePressurePsia };
  const evaluate = (pressurePsig: number, lineF: number): number =>
    kind === "superheat"
      ? superheatF({ ...place, suctionPressurePsig: pressurePsig, suctionLineF: lineF })
      : subcoolingF({ ...place, liquidPressurePsig: pressurePsig, liquidLineF: lineF });
  // First, because its refusal of a pressure beyond the table names the reading.
  evaluate(pressure.value, line.value);

  const { inputs, unknownAccuracy } = prepareReadings<ReadingName>(
    values.readings,
    [pressureName, lineName],
    limits["startup.systematicShare"],
  );
  const tableUncertaintyF = saturationTempUncertaintyF(
    refrigerant,
    absolutePressurePsia(pressure.value, sitePressurePsia),
    kind === "superheat" ? "dew" : "bubble",
  );
  const result = withUncertainty(
    (at: Readonly<Partial<Record<string, number>>>) =>
      evaluate(at[pressureName] ?? Number.NaN, at[lineName] ?? Number.NaN) + (at[TABLE] ?? Number.NaN),
    {
      ...inputs,
      [TABLE]: {
        value: 0,
        standardUncertainty: tableUncertaintyF / COVERAGE_FACTOR,
        instrumentId: null,
      },
    },
  );
  return { result, unknownAccuracy };
}

/**
 * Expanded uncertainty of gauge and probe alone, °F; `null` when an accuracy is not known.
 *
 * @returns °F.
 */
export function instrumentUncertaintyF({ result, unknownAccuracy }: Result): number | null {
  if (unknownAccuracy.length > 0) return null;
  const table = result.budget.find((line) => line.input === TABLE);
  return COVERAGE_FACTOR * (table?.withoutIt ?? result.standardUncertainty);
}
