import { standardPressurePsia } from "@/lib/engineering/air";
import { nextStepFor, numberText } from "@/lib/engineering/airflow";
import { absolutePressurePsia, saturationTempF } from "@/lib/engineering/refrigerant";
import { ImpossibleStateError } from "../errors";
import { type Finding, finding, notMeasured } from "../findings";
import { airReadingsOf } from "./air-checks";
import { ELECTRICAL_CAUTION } from "./cautions";
import { product, rescaled } from "./combined-results";
import { judge, type Result, resultFigure, resultText, whatWouldSettle } from "./judged";
import { prepareReadings } from "./propagate";
import { startupRules } from "./rules";
import { fieldNames, guarded, missingNames, type StageCheck } from "./stage-check";
import { withUncertainty } from "./with-uncertainty";

const BTUH_PER_WATT = 3.412;
const RANKINE_OFFSET_F = 459.67;

/**
 * Air-side capacity over outdoor unit power, as a share of the ideal machine between the two saturation temperatures.
 * From volts and amps the power is an upper bound, so only "too good to be true" can then be judged.
 *
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} for inputs that cannot be, naming the field.
 */
export function energyBalanceFinding(check: StageCheck): Finding {
  const rule = startupRules.energyBalance;
  const { values, site, limits } = check;
  const { readings } = values;
  const power = readings.outdoorUnitPowerW;
  const fromVoltAmps =
    power === null && readings.outdoorUnitVolts !== null && readings.outdoorUnitAmps !== null;
  const powerNames = fromVoltAmps
    ? (["outdoorUnitVolts", "outdoorUnitAmps"] as const)
    : (["outdoorUnitPowerW"] as const);
  const pressures = ["suctionPressurePsig", "liquidPressurePsig"] as const;
  const names = [...airReadingsOf(check), ...pressures, ...powerNames];
  const { elevationFt, refrigerant } = site;
  const missing = missingNames(check, names, { elevationFt, refrigerant });
  if (missing.length > 0 || elevationFt === null || refrigerant === null) {
    return notMeasured(
      rule,
      missing,
      "Read air side, both pressures and the power of the outdoor unit at the same time.",
    );
  }
  const sitePressurePsia = standardPressurePsia(elevationFt);
  return guarded(check, rule, names, () => {
    const cooling = values.mode === "cooling";
    const delivered = check.getDelivered();
    const capacity = cooling ? delivered.totalBtuh : rescaled(delivered.sensibleBtuh, -1);
    const plant = prepareReadings(readings, [...pressures, ...powerNames], limits["startup.systematicShare"]);
    // The ideal share of the machine alone: refrigerant side and power, for a capacity of 1 Btu/h.
    const perBtuh = withUncertainty((at: Readonly<Partial<Record<string, number>>>) => {
      const watts = fromVoltAmps
        ? (at.outdoorUnitVolts ?? Number.NaN) * (at.outdoorUnitAmps ?? Number.NaN)
        : (at.outdoorUnitPowerW ?? Number.NaN);
      const saturationR = (gaugePsig: number | undefined, side: "dew" | "bubble") =>
        saturationTempF(refrigerant, absolutePressurePsia(gaugePsig ?? Number.NaN, sitePressurePsia), side) +
        RANKINE_OFFSET_F;
      const cold = saturationR(at.suctionPressurePsig, "dew");
      const hot = saturationR(at.liquidPressurePsig, "bubble");
      if (hot - cold < 1) {
        throw new ImpossibleStateError(
          "The liquid pressure is not above the suction pressure; check whether the two were swapped.",
          pressures,
        );
      }
      return (hot - cold) / (cooling ? cold : hot) / (BTUH_PER_WATT * watts);
    }, plant.inputs);
    const said: Result = {
      result: product(capacity, perBtuh),
      unknownAccuracy: [...delivered.unknownAccuracy, ...plant.unknownAccuracy],
    };
    const range = {
      min: fromVoltAmps ? null : limits["startup.carnotShareMin"],
      max: limits["startup.carnotShareMax"],
    };
    const verdict = judge(said, range, limits["startup.unknownAccuracyBand"]);
    const asked =
      range.min === null
        ? `at most ${numberText(range.max, 2)} is plausible, and volts × amps overstates the power`
        : `${numberText(range.min, 2)} to ${numberText(range.max, 2)} is plausible`;
    return finding(rule, {
      verdict,
      statement: `${values.stage}: capacity on the air side for the power taken is ${resultText(said, "", 2)} of the ideal between the two saturation temperatures; ${asked}.`,
      figures: [resultFigure("Share of the ideal", said, "ratio", 2)],
      nextStep: nextStepFor(verdict, {
        fallsShort:
          said.result.value > range.max
            ? "Too good to be true: measure airflow and wet bulbs again."
            : "Much power for little capacity: check airflow and the air readings, then charge.",
        cantTell: whatWouldSettle(said, range),
      }),
      caution: ELECTRICAL_CAUTION,
      inputs: fieldNames(check, [...names, "elevationFt", "refrigerant"]),
    });
  });
}
