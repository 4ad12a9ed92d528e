import { callbacks } from "@/lib/db/callbacks";
import { withTenant } from "@/lib/db/with-tenant";
import type { TenantScope } from "@/lib/domain/scope";
import { renderSheet } from "@/lib/reports/render-sheet";
import { acrossJobsSchema } from "@/lib/schemas/across-jobs";
import { comparison } from "./across-jobs";
import { brandPaper, packetBrand } from "./brand";
import { companyToday } from "./company-today";
import { MONTH_COMPARISONS, type MonthParts, monthView } from "./packet-views/month";

/** The owner's digest of a month, on two pages; the running month where none is named. It is made anew each time. */
export async function monthDigest(
  scope: TenantScope,
  month: string | null,
  now = new Date(),
): Promise<{ readonly bytes: Uint8Array; readonly fileName: string }> {
  const parts = await withTenant(scope, async (): Promise<MonthParts> => {
    const today = await companyToday(scope, now);
    const comparisons: MonthParts["comparisons"][number][] = [];
    for (const by of MONTH_COMPARISONS)
      comparisons.push(await comparison(scope, { ...acrossJobsSchema.parse({}), by }));
    const shown = month ?? today.slice(0, 7);
    const any = { jobId: null, state: null, kind: null };
    const reported = { ...any, reportedIn: shown };
    const ofMonth = await callbacks(scope).count(reported);
    return {
      brand: await packetBrand(scope),
      paper: await brandPaper(scope),
      month: shown,
      createdOn: today,
      reported: await callbacks(scope).list(reported, { take: ofMonth, skip: 0 }),
      waiting:
        (await callbacks(scope).count({ ...any, state: "open" })) +
        (await callbacks(scope).count({ ...any, state: "fixed" })),
      comparisons,
    };
  });
  return { bytes: await renderSheet(monthView(parts)), fileName: `month-${parts.month}.pdf` };
}
