import { ImpossibleStateError, OutOfRangeError } from "../errors";
import { type Pounds, quantity, type SquareFeet } from "../units";
import type { Refrigerant } from "./saturation";

const KG_PER_LB = 0.45359237;
const M_PER_FT = 0.3048;
const FT2_PER_M2 = 1 / (M_PER_FT * M_PER_FT);
/** m³: charges up to this volume of the lower flammability limit need no minimum room. */
const NO_ROOM_LIMIT_M3 = 6;
/** m³: the largest charge of one circuit that the room rule covers. */
const LARGEST_CHARGE_M3 = 52;

/** Lower flammability limit, kg/m³. A refrigerant that is not here is not flammable (A1). */
const LOWER_FLAMMABILITY_KG_PER_M3: { readonly [R in Refrigerant]?: number } = {
  "R-32": 0.306,
  "R-454B": 0.296,
};

/**
 * True for the mildly flammable (A2L) refrigerants of the table.
 *
 * @param refrigerant - One of {@link REFRIGERANTS}.
 * @returns True for R-32 and R-454B.
 * @see ASHRAE 34 class A2L (recalled).
 */
export function isFlammable(refrigerant: Refrigerant): boolean {
  return Object.hasOwn(LOWER_FLAMMABILITY_KG_PER_M3, refrigerant);
}

/**
 * Charge limits of a flammable (A2L) refrigerant. The manufacturer's table governs.
 *
 * @param refrigerant - R-32 or R-454B.
 * @returns `noRoomLimitLb`, the charge up to which no room is too small (6 m³ × LFL), and `largestLb` (52 m³ × LFL), lb.
 * @throws {@link ImpossibleStateError} for a refrigerant that is not flammable.
 * @see UL 60335-2-40 charge classes m1 and m2 (limits of flammability published; charges computed).
 */
export function flammableChargeLimits(refrigerant: Refrigerant): {
  readonly noRoomLimitLb: Pounds;
  readonly largestLb: Pounds;
} {
  const limit = getLowerFlammability(refrigerant);
  return {
    noRoomLimitLb: ((NO_ROOM_LIMIT_M3 * limit) / KG_PER_LB) as Pounds,
    largestLb: ((LARGEST_CHARGE_M3 * limit) / KG_PER_LB) as Pounds,
  };
}

const charge = quantity("chargeLb", "lb", 0, 100);
// 0.6 m (floor) to 2.2 m (ceiling), the release heights the rule is written for.
const releaseHeight = quantity("releaseHeightFt", "ft", 1.96, 7.22);

/**
 * Smallest floor area of an unventilated room for a flammable charge, `(m / (2.5·LFL^1.25·h0))²` in SI units.
 * The manufacturer's table governs.
 *
 * @param room - `chargeLb` above 0 to 100 lb, not above {@link flammableChargeLimits}; `releaseHeightFt` 1.96 to 7.22 ft.
 * @returns Area, ft²; `null` when the charge is small enough for any room.
 * @throws {@link OutOfRangeError} outside those ranges; {@link ImpossibleStateError} for a refrigerant that is not flammable.
 * @see UL 60335-2-40, unventilated area (recalled).
 */
export function findMinimumRoomAreaFt2(room: {
  readonly refrigerant: Refrigerant;
  readonly chargeLb: number;
  readonly releaseHeightFt: number;
}): SquareFeet | null {
  const { noRoomLimitLb, largestLb } = flammableChargeLimits(room.refrigerant);
  const chargeLb = charge(room.chargeLb);
  const heightM = releaseHeight(room.releaseHeightFt) * M_PER_FT;
  if (chargeLb > largestLb) throw new OutOfRangeError("chargeLb", chargeLb, "lb", 0, largestLb);
  if (chargeLb <= noRoomLimitLb) return null;
  const limit = getLowerFlammability(room.refrigerant);
  const areaM2 = ((chargeLb * KG_PER_LB) / (2.5 * limit ** 1.25 * heightM)) ** 2;
  return (areaM2 * FT2_PER_M2) as SquareFeet;
}

function getLowerFlammability(refrigerant: Refrigerant): number {
  const limit = isFlammable(refrigerant) ? LOWER_FLAMMABILITY_KG_PER_M3[refrigerant] : undefined;
  if (limit !== undefined) return limit;
  throw new ImpossibleStateError(`${refrigerant} is not a flammable (A2L) refrigerant`, ["refrigerant"]);
}
