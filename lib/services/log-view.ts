import { company } from "@/lib/db/company";
import { type LogImport, logs } from "@/lib/db/logs";
import type { Job } from "@/lib/domain/jobs";
import { may } from "@/lib/domain/roles";
import type { TenantScope } from "@/lib/domain/scope";
import { logAir } from "@/lib/engineering/logs/log-air";

export type LogPoint = {
  readonly atMs: number;
  readonly relativeHumidityPercent: number | null;
  readonly dewPointF: number | null;
};

export type LogPanelView = {
  readonly jobId: string;
  readonly imports: readonly LogImport[];
  /** The chosen import, or the newest. */
  readonly shown: LogImport | null;
  readonly points: readonly LogPoint[];
  readonly limitPct: number | null;
  readonly timeZone: string;
  readonly mayUpload: boolean;
};

/** The imports of a job and the readings of the one under review. */
export async function logPanelView(
  scope: TenantScope,
  job: Job,
  chosenId: string | null,
  limitPct: number | null,
): Promise<LogPanelView> {
  const imports = await logs(scope).list(job.id);
  const { timeZone } = await company(scope).get();
  const shown = imports.find((one) => one.id === chosenId) ?? imports[0] ?? null;
  const days = shown ? await logs(scope).days(job.id, shown.id) : [];
  // A dew point does not depend on air pressure, so the elevation does not matter here.
  const air = logAir(0);
  const points = days.flatMap((day) => {
    const { indoorRhPct, indoorDbF } = day.channels;
    return Array.from(day.offsetMinutes, (minutes, index) => {
      const humidity = indoorRhPct?.[index] ?? Number.NaN;
      return {
        atMs: day.startsAt.getTime() + minutes * 60_000,
        relativeHumidityPercent: finite(humidity),
        dewPointF: finite(air.dewPointF(air.vapourPsia(indoorDbF?.[index] ?? Number.NaN, humidity))),
      };
    });
  });
  return {
    jobId: job.id,
    imports,
    shown,
    points,
    limitPct,
    timeZone,
    mayUpload: may(scope.role, "log.upload"),
  };
}

/** A gap is kept as NaN; on screen it is nothing. */
function finite(value: number): number | null {
  return Number.isFinite(value) ? value : null;
}
