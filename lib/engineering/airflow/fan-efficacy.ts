import { type Quantity, quantity, requireRange } from "../units";

export type WattsPerCfm = Quantity<"W/cfm">;
const wattsPerCfmQuantity = quantity("fan efficacy", "W/cfm", 0, 100);

export type FanGrade = "grade I" | "grade II" | "grade III";

/**
 * Fan power per airflow, with its grade.
 *
 * @param input.fanPowerW - Measured fan power, W. 0 to 5,000.
 * @param input.airflowCfm - Measured airflow, cfm. 50 to 20,000.
 * @param input.gradeOneMax - Highest W/cfm of grade I (0.45).
 * @param input.gradeTwoMax - Highest W/cfm of grade II (0.58).
 * @returns W/cfm and the grade.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see ANSI/RESNET/ICC 310, blower fan watt draw grades 0.45 and 0.58 W/cfm (recalled).
 */
export function fanEfficacy(input: {
  readonly fanPowerW: number;
  readonly airflowCfm: number;
  readonly gradeOneMax: number;
  readonly gradeTwoMax: number;
}): { readonly wattsPerCfm: WattsPerCfm; readonly grade: FanGrade } {
  requireRange("fan power", input.fanPowerW, "W", 0, 5_000);
  requireRange("airflow", input.airflowCfm, "cfm", 50, 20_000);
  requireRange("grade I limit", input.gradeOneMax, "W/cfm", 0, 10);
  requireRange("grade II limit", input.gradeTwoMax, "W/cfm", input.gradeOneMax, 10);
  const wattsPerCfm = wattsPerCfmQuantity(input.fanPowerW / input.airflowCfm);
  if (wattsPerCfm <= input.gradeOneMax) return { wattsPerCfm, grade: "grade I" };
  if (wattsPerCfm <= input.gradeTwoMax) return { wattsPerCfm, grade: "grade II" };
  return { wattsPerCfm, grade: "grade III" };
}
