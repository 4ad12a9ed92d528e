import { company } from "@/lib/db/company";
import { forecastsLived } from "@/lib/db/forecasts-lived";
import { logs } from "@/lib/db/logs";
import { weatherFiles } from "@/lib/db/weather-files";
import { workItems } from "@/lib/db/work-items";
import type { JobContext } from "@/lib/domain/evaluate";
import { type ForecastMissing, missingHref } from "@/lib/domain/forecast";
import { carrying, explanations } from "@/lib/domain/forecast-lived/explain";
import { forecastLivedFindings } from "@/lib/domain/forecast-lived/finding";
import type { ForecastLivedView } from "@/lib/domain/forecast-lived/section";
import type { Job } from "@/lib/domain/jobs";
import { may } from "@/lib/domain/roles";
import type { TenantScope } from "@/lib/domain/scope";
import { designToHold, livedInForce } from "./lived-forecast";

/** Everything the section *Forecast vs Lived* shows: of the log chosen, or of the newest. */
export async function forecastLivedView(
  scope: TenantScope,
  job: Job,
  context: JobContext,
): Promise<ForecastLivedView> {
  const imports = (await logs(scope).list(job.id)).filter(({ summary }) => summary !== null);
  const shown = imports.find((one) => one.id === context.log?.importId) ?? imports[0] ?? null;
  const file = await weatherFiles(scope).find(job.weatherFileId);
  const lived =
    shown === null ? null : await livedInForce(scope, shown.id, context, file === null ? null : file.sha256);
  const work =
    shown === null ? null : await workItems(scope).unfinished("hold forecast against log", shown.id);
  const design = designToHold(context);
  const { timeZone } = await company(scope).get();
  const lacks: readonly ForecastMissing[] = design.ready ? [] : design.missing;
  return {
    jobId: job.id,
    importId: shown?.id ?? null,
    lived,
    findings: forecastLivedFindings(lived, context.limits),
    explanations: lived === null ? [] : explanations(lived),
    carrying: lived === null ? null : carrying(lived),
    picture: lived === null || shown === null ? null : await forecastsLived(scope).picture(shown.id),
    timeZone,
    missing: [
      ...(file === null ? [{ text: "A weather file for the job", href: `/jobs/${job.id}` }] : []),
      ...(context.elevationFt === null ? [{ text: "The home’s elevation", href: null }] : []),
      ...lacks.map((one) => ({ text: one.text, href: missingHref(job.id, one) })),
    ],
    working: work === null ? null : { done: work.done, total: work.total },
    mayHold: may(scope.role, "review.edit"),
  };
}
