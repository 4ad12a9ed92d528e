import { standardPressurePsia } from "@/lib/engineering/air";
import { thermostatTimeline } from "@/lib/engineering/controls";
import { humidityCapability } from "@/lib/engineering/equipment";
import { isEngineeringError } from "@/lib/engineering/errors";
import { type Finding, notMeasured, type Rule, type Verdict } from "@/lib/engineering/findings";
import { worstVerdict } from "../jobs";
import { STAGES, type StageKey } from "../stages/keys";
import { airflowSetupFindings, designAirflow } from "./airflow";
import { airflowAsSet } from "./airflow-as-set";
import { heldSystem } from "./capacity";
import { type JobContext, valueIfKnown } from "./context";
import { controlSetupFindings, hotAfternoon } from "./controls";
import { type EquipmentResults, equipmentFindings, equipmentResults } from "./equipment";
import { jobFacts } from "./facts";
import { ledgerLines } from "./ledger-lines";
import { loadSummaryFindings } from "./load";
import type { Evaluation, JobResults } from "./results";
import { humidityReviewFindings } from "./review";
import { type StartupResults, startupResults } from "./startup";

export type { JobContext, LogSummary, WeatherDesign } from "./context";
export type { Evaluation } from "./results";

/** Raised when a change of the rules or the equations changes what a record says. Kept with every snapshot. */
export const ENGINE_VERSION = "1";

const possibleRule: Rule = {
  id: "job.inputs-possible",
  title: "Inputs can be computed with",
  equation: "every input inside the range in which its equation is valid",
  basis: { kind: "physics", source: "the valid range stated at each equation", certainty: "computed" },
  limits: [],
  checkedBy: "tests/domain/evaluate.test.ts",
};

export const jobRules = { inputsPossible: possibleRule } as const satisfies Record<string, Rule>;

const BTUH_PER_TON = 12_000;

/**
 * Computes everything that follows from a job's records: findings, verdicts, ledger, facts. Pure, so that
 * the phone without signal, the screen while typing and the server at signing say the same.
 */
export function evaluateJob(context: JobContext): Evaluation {
  const airflow = airflowAsSet(context.model, context.inputs.airflow_setup);
  const equipment = equipmentResults(context, airflow);
  const designCfm = designAirflow(context);
  const startup = guardedStartup(() => startupResults(context, valueIfKnown(designCfm), airflow));
  const findings: Record<StageKey, readonly Finding[]> = {
    load_summary: guarded(() => loadSummaryFindings(context)),
    equipment_selection: guarded(() => equipmentFindings(context, equipment)),
    airflow_setup: guarded(() => airflowSetupFindings(context, airflow, equipment, designCfm)),
    control_setup: guarded(() => controlSetupFindings(context, airflow, equipment)),
    startup_record: startup.findings,
    humidity_review: guarded(() => humidityReviewFindings(context)),
  };
  const measuredCfm = startup.stages.find((one) => one.key === "second")?.airflowCfm ?? null;
  const setCfm = valueIfKnown(airflow.second)?.airflowCfm ?? null;
  const results: JobResults = {
    airflow,
    designCfm,
    equipment,
    startup,
    findings,
    cfmPerTon: { set: perTon(setCfm, equipment), measured: perTon(measuredCfm, equipment) },
    secondStageSharePct: secondStageShare(context, equipment),
    lowestRhPct: lowestHumidity(context, equipment),
  };
  const verdicts = Object.fromEntries(
    STAGES.map((stage) => [stage, worstVerdict(findings[stage])]),
  ) as Record<StageKey, Verdict | null>;
  return {
    results,
    findings,
    questions: startup.questions,
    verdicts,
    ledger: ledgerLines(context, results),
    facts: jobFacts(context, results, verdicts),
    engineVersion: ENGINE_VERSION,
  };
}

/** A draft may hold a combination no equation covers. That is a finding of its own stage, never a broken page. */
function guarded(find: () => readonly Finding[]): readonly Finding[] {
  return attempt(find, (message) => [refusal(message)]);
}

function guardedStartup(find: () => StartupResults): StartupResults {
  return attempt(find, (message) => ({ stages: [], findings: [refusal(message)], questions: [] }));
}

function refusal(message: string): Finding {
  return { ...notMeasured(possibleRule, [], "Check the value named here."), statement: `${message}.` };
}

function attempt<T>(compute: () => T, refused: (message: string) => T): T {
  try {
    return compute();
  } catch (error) {
    if (isEngineeringError(error)) return refused(error.message);
    throw error;
  }
}

/** Airflow per ton of what the system as set gives at design, as the finding counts it, cfm/ton. */
function perTon(airflowCfm: number | null, { full }: EquipmentResults): number | null {
  const capacity = valueIfKnown(full);
  if (airflowCfm === null || capacity === null) return null;
  return airflowCfm / (capacity.totalBtuh / BTUH_PER_TON);
}

function secondStageShare(context: JobContext, equipment: EquipmentResults): number | null {
  const house = hotAfternoon(context, equipment);
  const inputs = context.inputs.control_setup;
  const {
    firstStageStartOffsetF,
    secondStageStartOffsetF,
    minimumCompressorRunMin,
    minimumCompressorRestMin,
  } = inputs;
  const { stepBackToFirstStage, fanRunOnAfterCoolingS, coolingPastSetpointF, fanBetweenCalls } = inputs;
  if (house?.stages.length !== 2 || firstStageStartOffsetF === null || secondStageStartOffsetF === null)
    return null;
  if (minimumCompressorRunMin === null || minimumCompressorRestMin === null || stepBackToFirstStage === null)
    return null;
  const share = attempt(
    () =>
      thermostatTimeline({
        house,
        settings: {
          firstStageStartOffsetF,
          secondStageStartOffsetF,
          minimumCompressorRunMin,
          minimumCompressorRestMin,
          stepBackToFirstStage,
          fanRunOnAfterCoolingS: fanRunOnAfterCoolingS ?? 0,
          coolingPastSetpointF: coolingPastSetpointF ?? 0,
          indoorTemperatureCorrectionF: 0,
          indoorHumidityCorrectionPct: 0,
          fanBetweenCalls: fanBetweenCalls === "on" ? "on" : "off",
          fanBetweenCallsMinPerH: null,
        },
      }).summary.secondStageShare,
    () => null,
  );
  return share === null ? null : 100 * share;
}

/** Only a held coil has a model from which a steady indoor humidity can be solved. */
function lowestHumidity(context: JobContext, equipment: EquipmentResults): number | null {
  const { load_summary: load, control_setup: controls } = context.inputs;
  const { model, elevationFt } = context;
  const airflow = valueIfKnown(equipment.airflow);
  const { indoorCoolingDbF, outdoorCoolingDbF, sensibleCoolingBtuh, latentCoolingBtuh } = load;
  if (!model?.data.heldCoil || !airflow || equipment.tons === null || elevationFt === null) return null;
  if (
    indoorCoolingDbF === null ||
    outdoorCoolingDbF === null ||
    sensibleCoolingBtuh === null ||
    latentCoolingBtuh === null
  )
    return null;
  const { heldCoil } = model.data;
  const tons = equipment.tons;
  return attempt(
    () => {
      const setting = {
        tons,
        nominalTons: model.nominalTons,
        colderCoil: controls.colderCoilCooling === true,
      };
      const found = humidityCapability({
        indoorDbF: indoorCoolingDbF,
        pressurePsia: standardPressurePsia(elevationFt),
        airflowCfm: airflow.cfm,
        system: heldSystem(model.data, heldCoil, setting, outdoorCoolingDbF),
        sensibleLoadBtuh: sensibleCoolingBtuh,
        latentLoadBtuh: latentCoolingBtuh,
      });
      return "relativeHumidityPct" in found ? (found.relativeHumidityPct as number) : null;
    },
    () => null,
  );
}
