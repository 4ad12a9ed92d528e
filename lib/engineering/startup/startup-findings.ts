import {
  airflowAgainstDesign,
  fanPowerPerAirflow,
  type Measured,
  staticAgainstDesign,
  staticAgainstMaximum,
} from "@/lib/engineering/airflow";
import type { Finding } from "../findings";
import { airFindings, splitFinding } from "./air-checks";
import { calibrationFinding } from "./calibration-check";
import { chargeChecks } from "./charge-checks";
import { condensateFinding } from "./condensate-check";
import { currentFinding, voltageFinding } from "./electrical-checks";
import { energyBalanceFinding } from "./energy-balance";
import { uncertainReading } from "./instrument";
import { READINGS, type ReadingName } from "./readings";
import { fieldNames, type StageCheck, type StartupLimitValues, stageCheck } from "./stage-check";
import { requireSite, requireStage, type StartupSite, type StartupStage } from "./startup-stage";
import { COVERAGE_FACTOR } from "./with-uncertainty";

export type StartupInput = StartupSite & { readonly stages: readonly StartupStage[] };

/**
 * Everything a startup says, stage by stage: steady running, charge, delivered capacity against what these conditions
 * should give, airflow, static pressure, electrical readings, the two cross-checks, and the instruments used.
 *
 * @param input - Readings with their instruments; ranges in `readings.ts`.
 * @param limits - The company's startup, airflow and refrigerant limits in force.
 * @returns Findings in a fixed order. Missing readings are `not measured`; contradicting ones are `can't tell` with the reason.
 * @throws {@link OutOfRangeError} naming a reading no instrument can show; {@link ImpossibleStateError} for an instrument
 * whose accuracy is in another unit or a day that is none.
 * @see JCGM 100:2008 for the uncertainty (recalled); the rules name each source.
 */
export function startupFindings(input: StartupInput, limits: StartupLimitValues): readonly Finding[] {
  const { stages, ...site } = input;
  requireSite(site);
  return stages.flatMap((values, index) =>
    stageFindings(stageCheck(values, site, `stages.${index}.`, limits)),
  );
}

function stageFindings(check: StageCheck): readonly Finding[] {
  const { values } = check;
  requireStage(values, check.fieldPrefix);
  const cooling = values.mode === "cooling";
  return [
    ...chargeChecks(check),
    ...airFindings(check),
    splitFinding(check),
    ...airflowChecks(check),
    voltageFinding(check),
    currentFinding(check),
    energyBalanceFinding(check),
    ...(cooling ? [condensateFinding(check)] : []),
    calibrationFinding(check),
  ];
}

/** Airflow, static and fan power, judged by the airflow folder. */
function airflowChecks(check: StageCheck): readonly Finding[] {
  const { values, limits } = check;
  const stage = {
    ...values,
    fieldPrefix: "",
    airflow: measured(check, "airflowCfm"),
    externalStatic: measured(check, "externalStaticInWc"),
    fanPower: measured(check, "fanPowerW"),
  };
  return [
    airflowAgainstDesign(stage, limits),
    staticAgainstMaximum(stage, limits),
    staticAgainstDesign(stage, limits),
    fanPowerPerAirflow(stage, limits),
  ].map((said) => ({ ...said, inputs: fieldNames(check, said.inputs) }));
}

function measured(check: StageCheck, name: ReadingName): Measured | null {
  const reading = check.values.readings[name];
  if (reading === null) return null;
  if (reading.instrument === null) return { value: reading.value, uncertainty: null };
  const { standardUncertainty } = uncertainReading(name, reading, READINGS[name].unit, 1);
  return { value: reading.value, uncertainty: COVERAGE_FACTOR * standardUncertainty };
}
