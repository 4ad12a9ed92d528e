import { livedDays } from "@/lib/db/lived-days";
import type { CallbackEvidence } from "@/lib/domain/callbacks";
import { dayAfter } from "@/lib/domain/days";
import { daysInWords } from "@/lib/domain/lived-days";
import type { TenantScope } from "@/lib/domain/scope";
import { STAGE_NAMES } from "@/lib/domain/stages";
import type { JobView } from "./job-view";

/** The complaint's own day and those before it. */
const DAYS_BEFORE = 3;

/** What the job's record says when a complaint comes in: ledger, log, settings as left, and the days before it. */
export async function callbackEvidence(
  scope: TenantScope,
  { job, context, evaluation }: JobView,
  reportedOn: string,
): Promise<CallbackEvidence> {
  const { log, inputs } = context;
  const { airflow_setup: airflow, control_setup: controls, equipment_selection: selection } = inputs;
  const left = inputs.startup_record;
  const days = await livedDays(scope, job.id, { from: dayAfter(reportedOn, -DAYS_BEFORE), to: reportedOn });
  return {
    fallsShort: evaluation.ledger
      .filter((line) => line.verdict === "falls short")
      .map((line) => `${line.group}: ${line.label}`),
    log: log
      ? `${log.firstAt.slice(0, 10)} to ${log.lastAt.slice(0, 10)}: ${log.hoursAboveLimit.toFixed(0)} of ${log.loggedHours.toFixed(0)} hours above ${log.limitPct} %, mean ${log.meanRhPct.toFixed(0)} %`
      : null,
    settings: [
      ...setting("Capacity setting", left.leftCapacitySetting ?? selection.capacitySetting),
      ...setting("First-stage airflow setting", airflow.firstStageAirflowSetting),
      ...setting("Second-stage airflow setting", airflow.secondStageAirflowSetting),
      ...setting(
        "Fan run-on after cooling",
        left.leftFanRunOnAfterCoolingS ?? controls.fanRunOnAfterCoolingS,
        " s",
      ),
      ...setting("Fan between calls", left.leftFanBetweenCalls ?? controls.fanBetweenCalls),
      ...setting(
        `${STAGE_NAMES.control_setup}, setpoint`,
        left.leftCoolingSetpointF ?? controls.coolingSetpointF,
        " °F",
      ),
    ],
    days: daysInWords(days),
  };
}

function setting(label: string, value: string | number | null, unit = ""): readonly string[] {
  return value === null || value === "" ? [] : [`${label}: ${value}${unit}`];
}
