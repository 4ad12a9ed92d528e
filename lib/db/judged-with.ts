import { accuracySchema, type Instrument } from "@/lib/domain/catalog";
import type { ForecastFigures, KeptForecast, KeptInputs } from "@/lib/domain/forecast/kept";
import { asId, type JobId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { jobIsVisible } from "./visibility";
import { withTenant } from "./with-tenant";

/** What a job is judged with beside its records and the catalog. */
export type JudgedWith = {
  /** Retired ones too: a reading keeps the accuracy it was taken with. */
  readonly instruments: readonly Instrument[];
  readonly limitOverrides: Readonly<Record<string, number>>;
  /** The forecast in force, in short. */
  readonly forecast: KeptForecast | null;
};

type ForecastRow = Omit<KeptForecast, "inputs" | "figures" | "supersededAt"> & {
  readonly inputs: unknown;
  readonly figures: unknown;
};
type Row = {
  readonly instruments: readonly (Omit<Instrument, "id"> & { readonly id: string })[];
  readonly limits: Readonly<Record<string, number>> | null;
  readonly forecast: ForecastRow | null;
};

/** Reads all of it in one statement, because every reading of every phone asks for it: the client would send five. */
export function judgedWith(scope: TenantScope, jobId: JobId): Promise<JudgedWith> {
  return withTenant(scope, async (tx) => {
    const [row] = await tx.$queryRaw<readonly Row[]>`
      SELECT
        (SELECT coalesce(jsonb_agg(jsonb_build_object('id', id, 'name', name, 'kind', kind, 'serialNumber', serial_number,
            'accuracy', accuracy, 'calibratedOn', calibrated_on, 'calibrationDueOn', calibration_due_on)
            || CASE WHEN retired_at IS NULL THEN '{}' ELSE '{"retired": true}' END::jsonb ORDER BY name), '[]')
          FROM instrument WHERE tenant_id = ${scope.tenantId}::uuid) AS instruments,
        (SELECT values FROM rule_limits WHERE tenant_id = ${scope.tenantId}::uuid ORDER BY revision DESC LIMIT 1) AS limits,
        (SELECT jsonb_build_object('id', forecast.id, 'optionLabel', forecast.option_label,
            'weatherFileId', forecast.weather_file_id, 'weatherName', weather.name,
            'engineVersion', forecast.engine_version, 'inputsHash', forecast.inputs_hash, 'seed', forecast.seed,
            'members', forecast.members, 'humidityLimitPct', forecast.humidity_limit_pct, 'keptAt', forecast.created_at,
            'keptByName', member.name, 'inputs', forecast.inputs, 'figures', forecast.summary)
          FROM forecast
          JOIN job ON job.tenant_id = forecast.tenant_id AND job.id = forecast.job_id
          JOIN weather_file weather ON weather.tenant_id = forecast.tenant_id AND weather.id = forecast.weather_file_id
          JOIN membership member ON member.tenant_id = forecast.tenant_id AND member.user_id = forecast.created_by
          WHERE ${jobIsVisible(scope)} AND forecast.tenant_id = ${scope.tenantId}::uuid
            AND forecast.job_id = ${jobId}::uuid AND forecast.superseded_at IS NULL) AS forecast`;
    const { instruments = [], limits = null, forecast = null } = row ?? {};
    return {
      instruments: instruments.map((one) => ({
        ...one,
        id: asId<"instrument">(one.id),
        accuracy: accuracySchema.parse(one.accuracy),
      })),
      limitOverrides: limits ?? {},
      forecast: forecast && {
        ...forecast,
        keptAt: new Date(forecast.keptAt).toISOString(),
        supersededAt: null,
        inputs: forecast.inputs as KeptInputs,
        figures: forecast.figures as ForecastFigures,
      },
    };
  });
}
