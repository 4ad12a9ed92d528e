import { createHash } from "node:crypto";
import { company } from "@/lib/db/company";
import { startupProgress } from "@/lib/db/startup-progress";
import { isUuid } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import type { StartupProgress } from "@/lib/domain/startup-progress";
import { notFound } from "@/lib/errors";

/** Today's startups in the company's own time zone. */
export async function startupsToday(
  scope: TenantScope,
  now = new Date(),
): Promise<{ readonly startups: readonly StartupProgress[]; readonly timeZone: string }> {
  const { timeZone } = await company(scope).get();
  // The Swedish way to write a date is the ISO day.
  const today = now.toLocaleDateString("sv-SE", { timeZone });
  return { startups: await startupProgress(scope).today(today), timeZone };
}

/** How far one job's startup is. */
export async function progressOfJob(scope: TenantScope, jobId: string): Promise<StartupProgress> {
  const found = isUuid(jobId) ? await startupProgress(scope).ofJob(jobId) : null;
  if (!found) throw notFound();
  return found;
}

/** The same with the time zone its times are shown in. */
export async function watchedJob(
  scope: TenantScope,
  jobId: string,
): Promise<{ readonly progress: StartupProgress; readonly timeZone: string }> {
  const progress = await progressOfJob(scope, jobId);
  return { progress, timeZone: (await company(scope).get()).timeZone };
}

/** Names a state of what is watched: an unchanged one is answered by its tag alone. */
export function progressTag(startups: readonly StartupProgress[]): string {
  return `"${createHash("sha256").update(JSON.stringify(startups)).digest("hex").slice(0, 32)}"`;
}
