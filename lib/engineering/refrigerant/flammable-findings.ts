import { type Finding, finding, notMeasured } from "../findings";
import { pounds, squareFeet } from "../units";
import { refrigerantCautions } from "./cautions";
import { findMinimumRoomAreaFt2, flammableChargeLimits, isFlammable } from "./flammable";
import { refrigerantRules } from "./rules";
import type { Refrigerant } from "./saturation";

/** What decides whether a flammable charge fits its room. `null`: not given. */
export type FlammableChargeReadings = {
  readonly refrigerant: Refrigerant | null;
  /** Total charge: factory charge and line set, lb. */
  readonly chargeLb: number | null;
  readonly roomAreaFt2: number | null;
  readonly releaseHeightFt: number | null;
};

/**
 * Judges a flammable (A2L) charge against its limits and the smallest unventilated room. The manufacturer's table governs.
 *
 * @param readings - `chargeLb` 0 to 100 lb; `roomAreaFt2` ft²; `releaseHeightFt` 1.96 to 7.22 ft; `null` where not given.
 * @returns One finding; none for a refrigerant that is not flammable.
 * @throws {@link OutOfRangeError} for a reading outside its range, naming it.
 * @see UL 60335-2-40 (recalled).
 */
export function flammableChargeFindings(readings: FlammableChargeReadings): readonly Finding[] {
  const rule = refrigerantRules.flammableCharge;
  const { refrigerant, chargeLb, roomAreaFt2, releaseHeightFt } = readings;
  const caution = refrigerantCautions.flammable;
  const governs = "Follow the manufacturer's charge and room table.";
  if (refrigerant === null) return [notMeasured(rule, ["refrigerant"], "Enter the refrigerant.")];
  if (!isFlammable(refrigerant)) return [];
  if (chargeLb === null) {
    return [notMeasured(rule, ["chargeLb"], "Enter the total charge: factory charge and line set.")];
  }

  const { noRoomLimitLb, largestLb } = flammableChargeLimits(refrigerant);
  const total = pounds(chargeLb);
  const charge = { label: "charge", value: total, unit: "lb", decimals: 2 };
  const said = `${refrigerant} charge ${total.toFixed(2)} lb`;
  if (total > largestLb) {
    return [
      finding(rule, {
        verdict: "falls short",
        statement: `${said} is above ${largestLb.toFixed(1)} lb, the most one circuit may hold.`,
        figures: [charge, { label: "largest charge", value: largestLb, unit: "lb", decimals: 1 }],
        nextStep: governs,
        caution,
        inputs: ["refrigerant", "chargeLb"],
      }),
    ];
  }
  if (total >= 0 && total <= noRoomLimitLb) {
    return [
      finding(rule, {
        verdict: "meets",
        statement: `${said} is within ${noRoomLimitLb.toFixed(2)} lb, below which no room is too small.`,
        figures: [
          charge,
          { label: "charge without a room limit", value: noRoomLimitLb, unit: "lb", decimals: 2 },
        ],
        nextStep: governs,
        caution,
        inputs: ["refrigerant", "chargeLb"],
      }),
    ];
  }
  if (roomAreaFt2 === null || releaseHeightFt === null) {
    const missing = (["roomAreaFt2", "releaseHeightFt"] as const).filter((field) => readings[field] === null);
    return [notMeasured(rule, missing, "Measure the smallest room the refrigerant could leak into.")];
  }
  const room = squareFeet(roomAreaFt2);
  const least = findMinimumRoomAreaFt2({ refrigerant, chargeLb: total, releaseHeightFt });
  if (least === null) return [];
  const meets = room >= least;
  return [
    finding(rule, {
      verdict: meets ? "meets" : "falls short",
      statement: `${said} needs an unventilated room of at least ${least.toFixed(0)} ft² with the leak at ${releaseHeightFt.toFixed(1)} ft; the room has ${room.toFixed(0)} ft².`,
      figures: [
        charge,
        { label: "smallest room", value: least, unit: "ft²", decimals: 0 },
        { label: "room", value: room, unit: "ft²", decimals: 0 },
      ],
      nextStep: meets
        ? governs
        : `${governs} It may allow ventilation, a leak detector or a larger connected space.`,
      caution,
      inputs: ["refrigerant", "chargeLb", "roomAreaFt2", "releaseHeightFt"],
    }),
  ];
}
