import { type InWc, inWc, type Quantity, quantity, requireRange } from "../units";

export type FrictionRate = Quantity<"in. w.c. per 100 ft">;
const frictionRateInWcPer100Ft = quantity("friction rate", "in. w.c. per 100 ft", 0, 2_000);

/** What the fan must push air through, in. w.c. each. A part that is not there is 0; one not known is `null`. */
export type StaticComponents = {
  readonly supplyInWc: number | null;
  readonly returnInWc: number | null;
  readonly filterInWc: number | null;
  /** 0 when the maker's fan table already has the coil inside. */
  readonly coilInWc: number | null;
  readonly otherInWc: number | null;
};

export type StaticBudget = {
  /** All five parts together, or `null` while one of them is missing. */
  readonly totalInWc: InWc | null;
  /** Filter, coil and other devices together. */
  readonly devicesInWc: InWc | null;
  /** What the fan's external static leaves for supply and return duct; negative when devices eat it all. */
  readonly availableForDuctsInWc: InWc | null;
  /** The maker's maximum minus the total; negative when over. */
  readonly leftToMaximumInWc: InWc | null;
  /** Names of the inputs that are missing. */
  readonly missing: readonly string[];
};

/**
 * Pressure loss the ducts may have per 100 ft of total effective length.
 *
 * @param availableInWc - Static pressure left for the ducts, in. w.c. 0 to 5.
 * @param totalEffectiveLengthFt - Longest supply plus longest return run with fittings, ft. 1 to 5,000.
 * @returns Friction rate, in. w.c. per 100 ft. Usable between 0.06 and 0.18 (recalled, a company limit).
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see ANSI/ACCA 1 Manual D: FR = available · 100 / TEL (published; 0.18 over 240 ft is 0.075).
 */
export function frictionRate(availableInWc: number, totalEffectiveLengthFt: number): FrictionRate {
  requireRange("available static pressure", availableInWc, "in. w.c.", 0, 5);
  requireRange("total effective length", totalEffectiveLengthFt, "ft", 1, 5_000);
  return frictionRateInWcPer100Ft((availableInWc * 100) / totalEffectiveLengthFt);
}

/**
 * Adds up where the fan's static pressure goes and what is left.
 *
 * @param input.components - Pressure drops, in. w.c., 0 to 5 each.
 * @param input.fanExternalStaticInWc - External static the fan gives at the design airflow, in. w.c. 0 to 5.
 * @param input.maximumInWc - The maker's maximum external static, in. w.c. 0 to 5.
 * @returns Sums in in. w.c.; a sum with a missing part is `null`, never a partial sum.
 * @throws {@link OutOfRangeError} naming the part outside its range.
 * @see ANSI/ACCA 1 Manual D, available static pressure (published: 0.50 − 0.32 = 0.18).
 */
export function staticBudget(input: {
  readonly components: StaticComponents;
  readonly fanExternalStaticInWc: number | null;
  readonly maximumInWc: number | null;
}): StaticBudget {
  const { supplyInWc, returnInWc, filterInWc, coilInWc, otherInWc } = input.components;
  const named = {
    supplyInWc,
    returnInWc,
    filterInWc,
    coilInWc,
    otherInWc,
    fanExternalStaticInWc: input.fanExternalStaticInWc,
    maximumInWc: input.maximumInWc,
  };
  for (const [name, value] of Object.entries(named)) {
    if (value !== null) requireRange(name, value, "in. w.c.", 0, 5);
  }
  const devicesInWc = sum([filterInWc, coilInWc, otherInWc]);
  const totalInWc = sum([devicesInWc, supplyInWc, returnInWc]);
  return {
    totalInWc,
    devicesInWc,
    availableForDuctsInWc: difference(input.fanExternalStaticInWc, devicesInWc),
    leftToMaximumInWc: difference(input.maximumInWc, totalInWc),
    missing: Object.entries(named).flatMap(([name, value]) => (value === null ? [name] : [])),
  };
}

function sum(parts: readonly (number | null)[]): InWc | null {
  let total = 0;
  for (const part of parts) {
    if (part === null) return null;
    total += part;
  }
  return inWc(total);
}

function difference(from: number | null, taken: number | null): InWc | null {
  return from === null || taken === null ? null : inWc(from - taken);
}
