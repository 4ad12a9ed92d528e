import { type Finding, finding, notMeasured } from "../findings";
import { type Cfm, cfm, requireRange } from "../units";
import type { StageName } from "./check-input";
import { airflowRules } from "./rules";
import { numberText } from "./sentences";

/** An airflow typed in whole cfm from the same numbers is the same airflow. */
const SAME_SHARE = 0.01;

/**
 * Airflow in use from the airflow a flow plate shows. The plate is a resistance of its own: with it in place of the filter
 * less air flows than in use.
 *
 * @param input.plateCfm - Airflow by the plate, cfm. 50 to 5,000.
 * @param input.supplyStaticInWc - Supply static with the filter in place, in. w.c. 0.01 to 3.
 * @param input.supplyStaticWithPlateInWc - Supply static at the same point with the plate in place, in. w.c. 0.01 to 3.
 * @returns Airflow with the filter in place, cfm.
 * @throws {@link OutOfRangeError} naming the reading.
 * @see Ducts that stay as they are (physics): pressure goes with the square of airflow, so
 *   cfm · √(static without / static with the plate). The method itself is recalled, not read.
 */
export function flowPlateAirflowCfm(input: {
  readonly plateCfm: number;
  readonly supplyStaticInWc: number;
  readonly supplyStaticWithPlateInWc: number;
}): Cfm {
  requireRange("plateCfm", input.plateCfm, "cfm", 50, 5_000);
  requireRange("supplyStaticInWc", input.supplyStaticInWc, "in. w.c.", 0.01, 3);
  requireRange("supplyStaticWithPlateInWc", input.supplyStaticWithPlateInWc, "in. w.c.", 0.01, 3);
  return cfm(input.plateCfm * Math.sqrt(input.supplyStaticInWc / input.supplyStaticWithPlateInWc));
}

/**
 * The airflow entered against what the flow plate shows, corrected for the plate.
 *
 * @param input.plateCfm - Airflow by the plate, cfm. 50 to 5,000.
 * @param input.supplyStaticInWc - Supply static with the filter in place, in. w.c. 0.01 to 3.
 * @param input.supplyStaticWithPlateInWc - The same with the plate in place, in. w.c. 0.01 to 3.
 * @param input.airflowCfm - The airflow entered for the stage, cfm. 50 to 5,000.
 * @returns `meets` when the airflow entered is the corrected one within 1 %; `can't tell` when it is another, or when the
 *   supply static rose with the plate in place, which no resistance does.
 * @throws {@link OutOfRangeError} naming the reading.
 * @see {@link flowPlateAirflowCfm} (physics; the method is recalled)
 */
export function flowPlateCorrection(
  input: StageName & {
    readonly plateCfm: number | null;
    readonly supplyStaticInWc: number | null;
    readonly supplyStaticWithPlateInWc: number | null;
    readonly airflowCfm: number | null;
  },
): Finding {
  const rule = airflowRules.flowPlate;
  const { stage, fieldPrefix, plateCfm, supplyStaticInWc, supplyStaticWithPlateInWc, airflowCfm } = input;
  const given = { plateCfm, supplyStaticInWc, supplyStaticWithPlateInWc, airflowCfm };
  const inputs = Object.keys(given).map((name) => `${fieldPrefix}${name}`);
  if (airflowCfm !== null) requireRange("airflowCfm", airflowCfm, "cfm", 50, 5_000);
  if (
    plateCfm === null ||
    supplyStaticInWc === null ||
    supplyStaticWithPlateInWc === null ||
    airflowCfm === null
  ) {
    return notMeasured(
      rule,
      Object.entries(given).flatMap(([name, value]) => (value === null ? [`${fieldPrefix}${name}`] : [])),
      "Read the supply static with the filter in place and with the plate in its place, and the airflow the plate shows.",
    );
  }
  const corrected = flowPlateAirflowCfm({ plateCfm, supplyStaticInWc, supplyStaticWithPlateInWc });
  const rose = supplyStaticWithPlateInWc > supplyStaticInWc;
  const same = Math.abs(airflowCfm - corrected) <= SAME_SHARE * corrected;
  const readings = `supply static ${numberText(supplyStaticInWc, 2)} in. w.c. with the filter and ${numberText(supplyStaticWithPlateInWc, 2)} with the plate`;
  const shows = `${stage}: the plate shows ${numberText(plateCfm, 0)} cfm, which at ${readings} is ${numberText(corrected, 0)} cfm in use`;
  return finding(rule, {
    verdict: same && !rose ? "meets" : "can't tell",
    statement: rose
      ? `${stage}: ${readings}: a plate can only add resistance, so one of the two is wrong.`
      : same
        ? `${shows}, as entered.`
        : `${shows}; ${numberText(airflowCfm, 0)} cfm is entered.`,
    figures: [
      { label: "Airflow by the plate", value: plateCfm, unit: "cfm", decimals: 0 },
      { label: "Airflow in use", value: corrected, unit: "cfm", decimals: 0 },
    ],
    nextStep: rose
      ? "Read the supply static again at the same point, first with the filter, then with the plate in its place."
      : same
        ? null
        : `Enter ${numberText(corrected, 0)} cfm as the airflow, or say how the other was measured.`,
    inputs,
  });
}
