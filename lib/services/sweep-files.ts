import type { TenantScope } from "@/lib/domain/scope";
import { sweepUnnamedFiles } from "@/lib/files/store";

/** Once a night, UTC; what a night without a server leaves, the next one takes. */
const NIGHT_HOUR = 8;
/** Nothing takes so long to be written. */
const DAY_MS = 86_400_000;

/** Deletes what a killed process left of files of this company that it was writing. To be called every hour. */
export async function sweepAtNight(scope: TenantScope, now: Date): Promise<void> {
  if (now.getUTCHours() !== NIGHT_HOUR) return;
  await sweepUnnamedFiles(scope.tenantId, new Date(now.getTime() - DAY_MS));
}
