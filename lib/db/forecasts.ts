import type {
  ForecastFigures,
  KeptForecast,
  KeptForecastWhole,
  KeptInputs,
  KeptResult,
} from "@/lib/domain/forecast/kept";
import type { JobId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { appendActivity } from "./activity";
import type { Prisma } from "./generated/client";
import { asJson } from "./json";
import { visibleJobs } from "./visibility";
import { withTenant } from "./with-tenant";

const SHORT = {
  id: true,
  optionLabel: true,
  weatherFileId: true,
  weatherFile: { select: { name: true } },
  engineVersion: true,
  inputsHash: true,
  seed: true,
  members: true,
  humidityLimitPct: true,
  inputs: true,
  summary: true,
  supersededAt: true,
  createdAt: true,
  createdByMember: { select: { name: true } },
} as const satisfies Prisma.ForecastSelect;
const WHOLE = { ...SHORT, result: true } as const satisfies Prisma.ForecastSelect;

export type NewForecast = Omit<
  KeptForecastWhole,
  "id" | "weatherName" | "keptAt" | "keptByName" | "supersededAt"
> & { readonly jobId: JobId; readonly optionId: string | null; readonly weatherSha256: string };

/** Forecasts kept with their jobs. None is ever changed; the newest is in force. */
export function forecasts(scope: TenantScope) {
  const own = { tenantId: scope.tenantId };
  const here = (jobId: JobId) => ({ ...own, jobId, job: visibleJobs(scope) });
  return {
    /** The one in force, in short. */
    inForce: (jobId: JobId): Promise<KeptForecast | null> =>
      withTenant(scope, async (tx) => {
        const row = await tx.forecast.findFirst({
          where: { ...here(jobId), supersededAt: null },
          select: SHORT,
        });
        return row && toShort(row);
      }),

    /** The one in force with its inputs, assumptions and pictures. */
    whole: (jobId: JobId): Promise<KeptForecastWhole | null> =>
      withTenant(scope, async (tx) => {
        const row = await tx.forecast.findFirst({
          where: { ...here(jobId), supersededAt: null },
          select: WHOLE,
        });
        // Written by `keep` from these types; JSON knows no others.
        return row && { ...toShort(row), result: row.result as unknown as KeptResult };
      }),

    /** All of them, newest first, in short. */
    list: (jobId: JobId): Promise<readonly KeptForecast[]> =>
      withTenant(scope, async (tx) => {
        const rows = await tx.forecast.findMany({
          where: here(jobId),
          orderBy: { id: "desc" },
          select: SHORT,
          take: 50,
        });
        return rows.map(toShort);
      }),

    /** Keeps a forecast in place of the one in force. The caller holds the job's lock. */
    keep: ({ jobId, figures, inputs, result, ...facts }: NewForecast): Promise<string> =>
      withTenant(scope, async (tx) => {
        const now = new Date();
        const before = await tx.forecast.findFirst({
          where: { ...here(jobId), supersededAt: null },
          select: { id: true, dryHours: true },
        });
        if (before)
          await tx.forecast.updateMany({ where: { ...own, id: before.id }, data: { supersededAt: now } });
        const { id } = await tx.forecast.create({
          data: {
            ...own,
            jobId,
            ...facts,
            dryHours: figures.ranges.dryHours.central,
            hoursAboveLimit: figures.ranges.hoursAboveLimit.central,
            summary: asJson(figures),
            inputs: asJson(inputs),
            result: asJson(result),
            createdAt: now,
            createdBy: scope.userId,
          },
          select: { id: true },
        });
        const { dryHours } = figures.ranges;
        await appendActivity(tx, scope, {
          action: "forecast kept",
          entity: "forecast",
          entityId: id,
          jobId,
          before: before ? { dryHours: Math.round(before.dryHours) } : {},
          after: { option: facts.optionLabel, dryHours: Math.round(dryHours.central) },
        });
        return id;
      }),
  };
}

function toShort(row: Prisma.ForecastGetPayload<{ select: typeof SHORT }>): KeptForecast {
  const { weatherFile, inputs, summary, supersededAt, createdAt, createdByMember, ...facts } = row;
  return {
    ...facts,
    inputs: inputs as unknown as KeptInputs,
    weatherName: weatherFile.name,
    figures: summary as unknown as ForecastFigures,
    keptAt: createdAt.toISOString(),
    keptByName: createdByMember.name,
    supersededAt: supersededAt?.toISOString() ?? null,
  };
}
