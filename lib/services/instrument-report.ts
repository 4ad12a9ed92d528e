import { DateTime } from "luxon";
import { company } from "@/lib/db/company";
import { instrumentUse } from "@/lib/db/instrument-use";
import { instruments } from "@/lib/db/instruments";
import { withTenant } from "@/lib/db/with-tenant";
import { type InstrumentReport, instrumentReport } from "@/lib/domain/instrument-report";
import type { TenantScope } from "@/lib/domain/scope";

const YEARS_LOOKED_BACK = 2;

/** Which instruments drift, are out of calibration, or are shared by odd readings, over the last two years. */
export function instrumentsReport(scope: TenantScope, now: Date): Promise<readonly InstrumentReport[]> {
  return withTenant(scope, async () => {
    const { timeZone } = await company(scope).get();
    const today = DateTime.fromJSDate(now, { zone: timeZone });
    const from = today.minus({ years: YEARS_LOOKED_BACK }).toISODate() ?? "";
    const use = await instrumentUse(scope).counted(from);
    const corrections = await instrumentUse(scope).corrections(from);
    return instrumentReport(await instruments(scope).list(), use, corrections, today.toISODate() ?? "");
  });
}
