import { type Finding, finding, notMeasured } from "../findings";
import { loadSlopeBtuhPerF } from "./afternoon";
import { contradictionFindings } from "./contradictions";
import { type ControlFindingsInput, type CorrectionReadings, requireControlFindingsInput } from "./input";
import { controlsRules } from "./rules";
import { settingFindings } from "./setting-findings";

/**
 * What the control and board settings amount to: each against the company's limits and by what it does to this
 * house on one afternoon, the corrections against their two readings, and what contradicts what.
 *
 * @param input - What has been entered; null for what has not.
 * @returns One finding a setting, then corrections, board and contradictions.
 * @throws {@link OutOfRangeError} naming an entered value outside its range.
 * @throws {@link ImpossibleStateError} when the house's own numbers contradict each other.
 * @see Limits: common practice, no source. Consequences: `thermostatTimeline`.
 */
export function controlFindings(input: ControlFindingsInput): readonly Finding[] {
  requireControlFindingsInput(input);
  return [
    ...settingFindings(input),
    temperatureCorrection(input),
    humidityCorrection(input),
    capacitySetting(input),
    ...contradictionFindings(input),
  ];
}

function temperatureCorrection(input: ControlFindingsInput): Finding {
  const slope = input.house === null ? null : loadSlopeBtuhPerF(input.house);
  return correction({
    rule: controlsRules.temperatureCorrection,
    field: "indoorTemperatureCorrectionF",
    readingsField: "temperatureReadings",
    set: input.settings.indoorTemperatureCorrectionF,
    readings: input.temperatureReadings,
    tolerance: input.limits["controls.temperatureCorrectionToleranceF"],
    unit: "°F",
    effect: (excess) =>
      `; the room is then held ${Math.abs(excess).toFixed(1)} °F too ${excess > 0 ? "cool" : "warm"}${
        slope === null
          ? ""
          : ` and the load is ${Math.abs(excess * slope).toFixed(0)} Btu/h ${excess > 0 ? "more" : "less"}`
      }`,
  });
}

function humidityCorrection(input: ControlFindingsInput): Finding {
  return correction({
    rule: controlsRules.humidityCorrection,
    field: "indoorHumidityCorrectionPct",
    readingsField: "humidityReadings",
    set: input.settings.indoorHumidityCorrectionPct,
    readings: input.humidityReadings,
    tolerance: input.limits["controls.humidityCorrectionTolerancePct"],
    unit: "%",
    effect: (excess) =>
      `; the house is then ${Math.abs(excess).toFixed(1)} % ${excess > 0 ? "drier" : "damper"} than the screen says`,
  });
}

/** A correction stands when both readings are recorded and their difference is what was set. */
function correction(asked: {
  readonly rule: typeof controlsRules.temperatureCorrection | typeof controlsRules.humidityCorrection;
  readonly field: string;
  readonly readingsField: string;
  readonly set: number | null;
  readonly readings: CorrectionReadings | null;
  readonly tolerance: number;
  readonly unit: string;
  /** What a correction set too high by `excess` does. */
  readonly effect: (excess: number) => string;
}): Finding {
  const { rule, field, readingsField, set, readings, tolerance, unit } = asked;
  if (set === null || readings === null) {
    const missing = [...(set === null ? [field] : []), ...(readings === null ? [readingsField] : [])];
    return notMeasured(
      rule,
      missing,
      "Hold a trusted instrument beside the thermostat, let both settle, and record both readings.",
    );
  }
  const needed = readings.trusted - readings.thermostatUncorrected;
  const excess = set - needed;
  // A guard of a millionth keeps a difference typed as exactly the tolerance inside it.
  const good = Math.abs(excess) <= tolerance + 1e-6;
  return finding(rule, {
    verdict: good ? "meets" : "falls short",
    statement: `The correction is ${set.toFixed(1)} ${unit}; the two readings (${readings.trusted.toFixed(1)} trusted, ${readings.thermostatUncorrected.toFixed(1)} thermostat) call for ${needed.toFixed(1)} ${unit}${good ? "" : asked.effect(excess)}.`,
    figures: [
      { label: "correction set", value: set, unit, decimals: 1 },
      { label: "correction by the two readings", value: needed, unit, decimals: 1 },
    ],
    nextStep: good ? null : `Set the correction to ${needed.toFixed(1)} ${unit}, or repeat the two readings.`,
    inputs: [field, readingsField],
  });
}

function capacitySetting({ board, selectedCapacityTons }: ControlFindingsInput): Finding {
  const rule = controlsRules.capacitySetting;
  const { capacitySettingTons: set, capacityAdjustmentByBoard: adjusts } = board;
  if (set === null || adjusts === null || selectedCapacityTons === null) {
    const missing = Object.entries({
      capacitySettingTons: set,
      capacityAdjustmentByBoard: adjusts,
      selectedCapacityTons,
    })
      .filter(([, value]) => value === null)
      .map(([name]) => name);
    return notMeasured(
      rule,
      missing,
      "Enter the capacity selected, the board's setting and whether it adjusts.",
    );
  }
  const same = Math.abs(set - selectedCapacityTons) < 0.01;
  return finding(rule, {
    verdict: same && !adjusts ? "meets" : "falls short",
    statement: `The board is set to ${set.toFixed(1)} tons, ${same ? "as selected" : `but ${selectedCapacityTons.toFixed(1)} tons were selected`}, and ${adjusts ? "may change it by itself, so the designed airflow per ton need not hold" : "does not change it by itself"}.`,
    figures: [
      { label: "capacity as set", value: set, unit: "tons", decimals: 1 },
      { label: "capacity selected", value: selectedCapacityTons, unit: "tons", decimals: 1 },
    ],
    nextStep:
      same && !adjusts
        ? null
        : `${same ? "" : `Set the capacity to ${selectedCapacityTons.toFixed(1)} tons. `}${adjusts ? "Turn capacity adjustment by the board off, or record why it stays on." : ""}`.trim(),
    inputs: ["capacitySettingTons", "capacityAdjustmentByBoard", "selectedCapacityTons"],
  });
}
