import { DateTime } from "luxon";
import { callbacks } from "@/lib/db/callbacks";
import { company } from "@/lib/db/company";
import { withTenant } from "@/lib/db/with-tenant";
import type { TenantScope } from "@/lib/domain/scope";
import { renderSheet } from "@/lib/reports/render-sheet";
import { acrossJobsView } from "./across-jobs";
import { brandPaper, packetBrand } from "./brand";
import { MONTH_COMPARISONS, type MonthParts, monthView } from "./packet-views/month";

/** The owner's digest of a month, on two pages; the running month where none is named. It is made anew each time. */
export async function monthDigest(
  scope: TenantScope,
  month: string | null,
  now = new Date(),
): Promise<{ readonly bytes: Uint8Array; readonly fileName: string }> {
  const parts = await withTenant(scope, async (): Promise<MonthParts> => {
    const { timeZone } = await company(scope).get();
    const today = DateTime.fromJSDate(now, { zone: timeZone });
    const comparisons: MonthParts["comparisons"][number][] = [];
    for (const by of MONTH_COMPARISONS) comparisons.push(await acrossJobsView(scope, { by, value: null }));
    return {
      brand: await packetBrand(scope),
      paper: await brandPaper(scope),
      month: month ?? today.toFormat("yyyy-MM"),
      createdOn: today.toFormat("yyyy-MM-dd"),
      callbacks: await callbacks(scope).list(null),
      comparisons,
    };
  });
  return { bytes: await renderSheet(monthView(parts)), fileName: `month-${parts.month}.pdf` };
}
