import type { Finding, Verdict } from "@/lib/engineering/findings";
import { withReasons } from "../deviations";
import { worstVerdict } from "../jobs";
import { STAGES, type StageKey } from "../stages/keys";
import { airflowSetupFindings, designAirflow } from "./airflow";
import { airflowAsSet } from "./airflow-as-set";
import { capacityMapOf } from "./capacity-map";
import { circuitFindings } from "./circuit";
import { type JobContext, valueIfKnown } from "./context";
import { controlSetupFindings } from "./controls";
import { type EquipmentResults, equipmentFindings, equipmentResults } from "./equipment";
import { jobFacts } from "./facts";
import { forecastFindings } from "./forecast";
import { attempt, guarded, refusal } from "./guard";
import { heatingFindings } from "./heating";
import { humidityCapabilityFindings, lowestHumidity } from "./humidity";
import { ledgerLines } from "./ledger-lines";
import { loadSummaryFindings } from "./load";
import { moistureBalanceFindings } from "./moisture";
import type { Evaluation, JobResults } from "./results";
import { humidityReviewFindings } from "./review";
import { secondStageShare } from "./second-stage";
import { stageDropFindings } from "./stage-drop";
import { type StartupResults, startupResults } from "./startup";

export {
  type JobContext,
  LOG_ANALYSIS,
  type LogSummary,
  type OutdoorSource,
  type WeatherDesign,
} from "./context";
export { ledgerJudges } from "./ledger-lines";
export { logContextOf } from "./log-context";
export type { Evaluation } from "./results";
export { logCannotTell, logCauses, withoutCause } from "./review";

/** Raised when a change of the rules or the equations changes what a record says. Kept with every snapshot. */
export const ENGINE_VERSION = "3";

const BTUH_PER_TON = 12_000;

/**
 * Computes everything that follows from a job's records: findings, verdicts, ledger, facts. Pure, so that
 * the phone without signal, the screen while typing and the server at signing say the same.
 */
export function evaluateJob(context: JobContext): Evaluation {
  const airflow = airflowAsSet(context.model, context.inputs.airflow_setup);
  const equipment = equipmentResults(context, airflow);
  const designCfm = designAirflow(context);
  const humidity = lowestHumidity(context, equipment);
  const startup = guardedStartup(() => startupResults(context, valueIfKnown(designCfm), airflow));
  const found: Record<StageKey, readonly Finding[]> = {
    load_summary: guarded(() => loadSummaryFindings(context)),
    equipment_selection: [
      ...guarded(() => equipmentFindings(context, equipment)),
      ...guarded(() => humidityCapabilityFindings(context, humidity)),
      ...guarded(() => heatingFindings(context)),
      ...guarded(() => moistureBalanceFindings(context, equipment)),
      ...guarded(() => forecastFindings(context)),
    ],
    airflow_setup: guarded(() => airflowSetupFindings(context, airflow, equipment, designCfm)),
    control_setup: [
      ...guarded(() => controlSetupFindings(context, airflow, equipment)),
      ...guarded(() => stageDropFindings(context, airflow, equipment)),
    ],
    startup_record: [...startup.findings, ...guarded(() => circuitFindings(context))],
    humidity_review: guarded(() => humidityReviewFindings(context)),
  };
  const findings = Object.fromEntries(
    STAGES.map((stage) => {
      const { deviations = null } = context.inputs[stage] as { readonly deviations?: string | null };
      return [stage, withReasons(found[stage], deviations)];
    }),
  ) as Record<StageKey, readonly Finding[]>;
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
    lowestRhPct:
      humidity.known && "relativeHumidityPct" in humidity.value ? humidity.value.relativeHumidityPct : null,
    capacityMap: capacityMapOf(context, airflow, equipment),
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

function guardedStartup(find: () => StartupResults): StartupResults {
  return attempt(find, (message) => ({ stages: [], findings: [refusal(message)], questions: [] }));
}

/** Airflow per ton of what the system as set gives at design, as the finding counts it, cfm/ton. */
function perTon(airflowCfm: number | null, { full }: EquipmentResults): number | null {
  const capacity = valueIfKnown(full);
  if (airflowCfm === null || capacity === null) return null;
  return airflowCfm / (capacity.totalBtuh / BTUH_PER_TON);
}
