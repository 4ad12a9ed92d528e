import { type Finding, finding, notMeasured } from "../findings";
import { ounces } from "../units";
import { refrigerantCautions } from "./cautions";
import { lineSetAdjustmentOz } from "./charge";
import { refrigerantRules } from "./rules";

/** What decides the charge for the line set. `null`: not given. */
export type LineSetReadings = {
  readonly lineLengthFt: number | null;
  /** Length the factory charge covers, from the maker. */
  readonly includedLengthFt: number | null;
  readonly ouncesPerFt: number | null;
  /** Charge weighed in beyond the factory charge; negative when taken out. */
  readonly addedOz: number | null;
};

/**
 * The maker's charge for the line set beside what was weighed in, for information: subcooling or superheat decides the charge.
 *
 * @param readings - Lengths 0 to 500 ft, 0 to 10 oz/ft, charge ±1,000,000 oz; `null` where not given.
 * @returns One finding.
 * @throws {@link OutOfRangeError} for a reading outside its range, naming it.
 * @see Maker's instructions; `(length − included) × oz/ft` (computed).
 */
export function lineSetFindings(readings: LineSetReadings): readonly Finding[] {
  const rule = refrigerantRules.lineSet;
  const { lineLengthFt, includedLengthFt, ouncesPerFt, addedOz } = readings;
  if (lineLengthFt === null || includedLengthFt === null || ouncesPerFt === null || addedOz === null) {
    const inputs = ["lineLengthFt", "includedLengthFt", "ouncesPerFt", "addedOz"] as const;
    const missing = inputs.filter((field) => readings[field] === null);
    return [
      notMeasured(rule, missing, "Enter the line set's length and the charge weighed in (0 when none)."),
    ];
  }
  const asked = lineSetAdjustmentOz({ lineLengthFt, includedLengthFt, ouncesPerFt });
  const added = ounces(addedOz);
  const left = asked - added;
  const apart =
    Math.abs(left) < 0.05 ? "as asked" : `${Math.abs(left).toFixed(1)} oz ${left > 0 ? "less" : "more"}`;
  return [
    finding(rule, {
      verdict: null,
      statement: `${lineLengthFt.toFixed(0)} ft of line set, ${includedLengthFt.toFixed(0)} ft of it in the factory charge, asks for ${signed(asked)} oz; ${signed(added)} oz went in, ${apart}.`,
      figures: [
        { label: "charge asked for", value: asked, unit: "oz", decimals: 1 },
        { label: "charge added", value: added, unit: "oz", decimals: 1 },
      ],
      nextStep: apart === "as asked" ? null : "Weigh it again, then let subcooling or superheat decide.",
      caution: refrigerantCautions.openCircuit,
      inputs: ["lineLengthFt", "addedOz"],
    }),
  ];
}

function signed(ouncesAsked: number): string {
  return `${ouncesAsked < 0 ? "−" : "+"}${Math.abs(ouncesAsked).toFixed(1)}`;
}
