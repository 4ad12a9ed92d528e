import { type Finding, finding, notMeasured } from "../findings";
import { requireRange } from "../units";
import type { AirflowLimitValues, StageName } from "./check-input";
import { fanEfficacy } from "./fan-efficacy";
import { type Measured, requireMeasured, scaled, verdictOnMeasured } from "./measured";
import { cfmPerTon } from "./measured-airflow";
import { airflowRules } from "./rules";
import { measuredFigure, measuredText, missing, nextStepFor, numberText, settledBy } from "./sentences";

/**
 * Measured airflow against design airflow.
 *
 * @param input.airflow - Measured airflow, cfm. 0 to 20,000.
 * @param input.designCfm - Design airflow of this stage, cfm. 50 to 20,000.
 * @param limits - Limits in force; ranges at `airflowLimits`.
 * @returns `meets` within the good band; outside it `falls short`, and the sentence says whether it is still fair.
 * @throws {@link OutOfRangeError} naming the field.
 * @see ANSI/RESNET/ICC 310 (recalled): ±15 % good, ±25 % fair.
 */
export function airflowAgainstDesign(
  input: StageName & { readonly airflow: Measured | null; readonly designCfm: number | null },
  limits: AirflowLimitValues,
): Finding {
  const { airflow, designCfm, fieldPrefix } = input;
  const rule = airflowRules.measuredAgainstDesign;
  requireMeasured(`${fieldPrefix}airflow`, airflow, "cfm", 0, 20_000);
  if (designCfm !== null) requireRange(`${fieldPrefix}designCfm`, designCfm, "cfm", 50, 20_000);
  if (airflow === null || designCfm === null) {
    return notMeasured(
      rule,
      missing(fieldPrefix, { airflow, designCfm }),
      `Measure the airflow of ${input.stage} and enter its design airflow.`,
    );
  }
  const share = scaled(airflow, 1 / designCfm);
  const goodPct = limits["airflow.goodPct"];
  const fairPct = limits["airflow.fairPct"];
  const good = around(designCfm, goodPct);
  const verdict = verdictOnMeasured(airflow, good, limits["airflow.unknownAccuracyBandPct"]);
  const grade = within(airflow.value, good)
    ? "good"
    : within(airflow.value, around(designCfm, fairPct))
      ? "fair, not good"
      : "outside fair";
  return finding(rule, {
    verdict,
    statement: `${input.stage}: airflow ${measuredText(airflow, "cfm", 0)} is ${numberText(share.value, 2)} of the design ${numberText(designCfm, 0)} cfm (${grade}; good is within ${numberText(goodPct, 0)} %, fair within ${numberText(fairPct, 0)} %).`,
    figures: [
      measuredFigure("Measured airflow", airflow, "cfm", 0),
      { label: "Design airflow", value: designCfm, unit: "cfm", decimals: 0 },
      measuredFigure("Share of design", share, "ratio", 2),
    ],
    nextStep: nextStepFor(verdict, {
      fallsShort:
        share.value < 1
          ? "Look for a loaded filter, closed dampers or crushed duct, then choose the next higher airflow setting."
          : "Choose the next lower airflow setting: more air than design dries less.",
      cantTell: settledBy(airflow, good, 1, "cfm", "An airflow measurement"),
    }),
    inputs: [`${fieldPrefix}airflow`, `${fieldPrefix}designCfm`],
  });
}

/**
 * Airflow per ton of the capacity as set, beside the dew point of the leaving air when it is known.
 *
 * @param input.airflow - Measured airflow, cfm. 0 to 20,000.
 * @param input.capacityAsSetBtuh - Total cooling capacity at the setting in use, Btu/h. 1,000 to 1,000,000.
 * @param input.leavingDewPointF - Dew point of the supply air, °F, −40 to 100, for information; `null` when not known.
 * @param limits - Limits in force; ranges at `airflowLimits`.
 * @returns `meets` inside the company's range, in cfm per ton.
 * @throws {@link OutOfRangeError} naming the field.
 * @see common practice, no source: a company's own range for its climate.
 */
export function airflowPerTon(
  input: StageName & {
    readonly airflow: Measured | null;
    readonly capacityAsSetBtuh: number | null;
    readonly leavingDewPointF: number | null;
  },
  limits: AirflowLimitValues,
): Finding {
  const { airflow, capacityAsSetBtuh, leavingDewPointF, fieldPrefix } = input;
  const rule = airflowRules.cfmPerTon;
  requireMeasured(`${fieldPrefix}airflow`, airflow, "cfm", 0, 20_000);
  if (capacityAsSetBtuh !== null)
    requireRange(`${fieldPrefix}capacityAsSetBtuh`, capacityAsSetBtuh, "Btu/h", 1_000, 1_000_000);
  if (leavingDewPointF !== null)
    requireRange(`${fieldPrefix}leavingDewPointF`, leavingDewPointF, "°F", -40, 100);
  if (airflow === null || capacityAsSetBtuh === null) {
    return notMeasured(
      rule,
      missing(fieldPrefix, { airflow, capacityAsSetBtuh }),
      `Measure the airflow of ${input.stage} and enter the capacity it is set to.`,
    );
  }
  const perTon = {
    ...scaled(airflow, cfmPerTon(1, capacityAsSetBtuh)),
    value: cfmPerTon(airflow.value, capacityAsSetBtuh),
  };
  const range = { min: limits["airflow.cfmPerTonMin"], max: limits["airflow.cfmPerTonMax"] };
  const verdict = verdictOnMeasured(perTon, range, limits["airflow.unknownAccuracyBandPct"]);
  const dewPoint =
    leavingDewPointF === null
      ? ""
      : ` Air leaves the coil with a dew point of ${numberText(leavingDewPointF, 1)} °F.`;
  return finding(rule, {
    verdict,
    statement: `${input.stage}: ${measuredText(perTon, "cfm/ton", 0)} of the capacity as set; the company's range is ${numberText(range.min, 0)} to ${numberText(range.max, 0)} cfm/ton.${dewPoint}`,
    figures: [
      measuredFigure("Airflow per ton", perTon, "cfm/ton", 0),
      ...(leavingDewPointF === null
        ? []
        : [{ label: "Leaving dew point", value: leavingDewPointF, unit: "°F", decimals: 1 }]),
    ],
    nextStep: nextStepFor(verdict, {
      fallsShort:
        perTon.value > range.max
          ? "Choose a lower airflow setting for this stage, or check the capacity setting: much air over a small capacity dries little."
          : "Check for frost and the maker's minimum before leaving the airflow this low.",
      cantTell: settledBy(perTon, range, capacityAsSetBtuh / 12_000, "cfm", "An airflow measurement"),
    }),
    inputs: [`${fieldPrefix}airflow`, `${fieldPrefix}capacityAsSetBtuh`],
  });
}

/**
 * Fan power per airflow against the grades.
 *
 * @param input.airflow - Measured airflow, cfm. 0 to 20,000.
 * @param input.fanPower - Measured fan power, W. 0 to 5,000.
 * @param limits - Limits in force; ranges at `airflowLimits`.
 * @returns `meets` for grade I or II, `falls short` for grade III.
 * @throws {@link OutOfRangeError} naming the field.
 * @see ANSI/RESNET/ICC 310 (recalled): 0.45 and 0.58 W/cfm.
 */
export function fanPowerPerAirflow(
  input: StageName & { readonly airflow: Measured | null; readonly fanPower: Measured | null },
  limits: AirflowLimitValues,
): Finding {
  const { airflow, fanPower, fieldPrefix } = input;
  const rule = airflowRules.fanEfficacy;
  requireMeasured(`${fieldPrefix}airflow`, airflow, "cfm", 0, 20_000);
  requireMeasured(`${fieldPrefix}fanPower`, fanPower, "W", 0, 5_000);
  if (airflow === null || fanPower === null) {
    return notMeasured(
      rule,
      missing(fieldPrefix, { airflow, fanPower }),
      `Measure fan watts and airflow of ${input.stage} at the same time.`,
    );
  }
  const gradeTwoMax = limits["airflow.fanGradeTwoWPerCfm"];
  const { wattsPerCfm, grade } = fanEfficacy({
    fanPowerW: fanPower.value,
    airflowCfm: airflow.value,
    gradeOneMax: limits["airflow.fanGradeOneWPerCfm"],
    gradeTwoMax,
  });
  const efficacy = { value: wattsPerCfm, uncertainty: quotientUncertainty(fanPower, airflow) };
  const range = { min: null, max: gradeTwoMax };
  const verdict = verdictOnMeasured(efficacy, range, limits["airflow.unknownAccuracyBandPct"]);
  return finding(rule, {
    verdict,
    statement: `${input.stage}: the fan takes ${measuredText(efficacy, "W/cfm", 2)}, ${grade}; grade I ends at ${numberText(limits["airflow.fanGradeOneWPerCfm"], 2)}, grade II at ${numberText(gradeTwoMax, 2)} W/cfm.`,
    figures: [measuredFigure("Fan power per airflow", efficacy, "W/cfm", 2)],
    nextStep: nextStepFor(verdict, {
      fallsShort: "Ease the static pressure first: fan power follows it.",
      cantTell: settledBy(efficacy, range, airflow.value, "W", "A fan power reading"),
    }),
    inputs: [`${fieldPrefix}airflow`, `${fieldPrefix}fanPower`],
  });
}

/** The range within a percentage of a design value, worded so that whole numbers stay exact. */
function around(designCfm: number, pct: number): { readonly min: number; readonly max: number } {
  return { min: (designCfm * (100 - pct)) / 100, max: (designCfm * (100 + pct)) / 100 };
}

function within(value: number, range: { readonly min: number; readonly max: number }): boolean {
  return value >= range.min && value <= range.max;
}

/** Expanded uncertainty of a quotient of two independent readings: relative uncertainties add in squares (JCGM 100:2008, 5.1.6). */
function quotientUncertainty(top: Measured, bottom: Measured): number | null {
  if (top.uncertainty === null || bottom.uncertainty === null) return null;
  const ownPart = top.uncertainty / bottom.value;
  const otherPart = (top.value * bottom.uncertainty) / bottom.value ** 2;
  return Math.hypot(ownPart, otherPart);
}
