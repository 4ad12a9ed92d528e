import type { ComparedBy, Measure, OutcomeCounted } from "@/lib/domain/across-jobs";
import type { TenantScope } from "@/lib/domain/scope";
import { Prisma } from "./generated/client";

/** Which jobs are asked about; days are those of the startup's signature. */
export type FactFilter = {
  readonly from: string | null;
  readonly to: string | null;
  readonly equipmentFamilyId: string | null;
};

/** The column or step behind each comparison. Only these words ever become part of a statement. */
export const COLUMNS: Readonly<Record<ComparedBy, Prisma.Sql>> = {
  equipment: Prisma.sql`equipment_family_id`,
  controlModelId: Prisma.sql`control_model_id`,
  capacitySetting: Prisma.sql`capacity_setting`,
  firstStageAirflowSetting: Prisma.sql`first_stage_airflow_setting`,
  secondStageAirflowSetting: Prisma.sql`second_stage_airflow_setting`,
  // In steps; the value is the step's lower end.
  firstStageCfmPerTon: Prisma.sql`floor(first_stage_cfm_per_ton / 25) * 25`,
  secondStageCfmPerTon: Prisma.sql`floor(second_stage_cfm_per_ton / 25) * 25`,
  externalStaticInWc: Prisma.sql`floor(external_static_in_wc * 10)`,
  secondStageStartOffsetF: Prisma.sql`second_stage_start_offset_f`,
  stepBackToFirstStage: Prisma.sql`step_back_to_first_stage`,
  fanRunOnSeconds: Prisma.sql`fan_run_on_seconds`,
  fanBetweenCalls: Prisma.sql`fan_between_calls`,
  builder: Prisma.sql`nullif(builder, '')`,
  verdict: Prisma.sql`verdict`,
  season: Prisma.sql`((startup_month % 12) / 3)`,
  startupMonth: Prisma.sql`startup_month`,
  techId: Prisma.sql`tech_id`,
};

/** The same as the text that stands in the address. */
export const keyOf = (by: ComparedBy) => Prisma.sql`(${COLUMNS[by]})::text`;

export const OUTCOME: Readonly<Record<OutcomeCounted, Prisma.Sql>> = {
  humidity: Prisma.sql`humidity_complaint_count > 0`,
  callback: Prisma.sql`callback_count > 0`,
  shortfall: Prisma.sql`startup_record_verdict = 'falls short'`,
  wet: Prisma.sql`humidity_review_verdict = 'falls short'`,
};

export const MEASURED: Readonly<Record<Measure, Prisma.Sql>> = {
  shareAboveLimitPct: Prisma.sql`share_above_limit_pct`,
  shareBetween50And60Pct: Prisma.sql`share_between_50_and_60_pct`,
  meanIndoorDewPointF: Prisma.sql`mean_indoor_dew_point_f`,
  livedDryHours: Prisma.sql`lived_dry_hours`,
  firstStageCfmPerTon: Prisma.sql`first_stage_cfm_per_ton`,
  secondStageCfmPerTon: Prisma.sql`second_stage_cfm_per_ton`,
  externalStaticInWc: Prisma.sql`external_static_in_wc`,
  sensibleRatio: Prisma.sql`sensible_ratio`,
  moistureRemovalLbPerH: Prisma.sql`moisture_removal_lb_per_h`,
  sizeRatio: Prisma.sql`size_ratio`,
  measuredSizeRatio: Prisma.sql`measured_size_ratio`,
  cyclesPerHour: Prisma.sql`cycles_per_hour`,
  secondStageSharePct: Prisma.sql`second_stage_share_pct`,
};

/** The jobs with a signed startup that a question is about. */
export function whichJobs(scope: TenantScope, { from, to, equipmentFamilyId }: FactFilter): Prisma.Sql {
  const since = from === null ? Prisma.empty : Prisma.sql`AND startup_signed_on >= ${from}::date`;
  const until = to === null ? Prisma.empty : Prisma.sql`AND startup_signed_on <= ${to}::date`;
  const model =
    equipmentFamilyId === null
      ? Prisma.empty
      : Prisma.sql`AND equipment_family_id = ${equipmentFamilyId}::uuid`;
  return Prisma.sql`tenant_id = ${scope.tenantId}::uuid AND startup_signed_on IS NOT NULL ${since} ${until} ${model}`;
}
