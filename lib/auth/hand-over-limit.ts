import { unscopedRateLimit } from "@/lib/db/unscoped/rate-limit";
import type { TenantScope } from "@/lib/domain/scope";

/** A phone with a full day of readings and pictures needs a tenth of this. */
const LIMIT = { points: 200, seconds: 3_600 };

/** Counts one hand-over of a person to a company and answers whether it may be made. */
export async function takeHandOver({ tenantId, userId }: TenantScope): Promise<boolean> {
  return (await unscopedRateLimit.count(`hand-over:${tenantId}:${userId}`, LIMIT.seconds)) <= LIMIT.points;
}
