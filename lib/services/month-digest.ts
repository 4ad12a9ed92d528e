import { DateTime } from "luxon";
import { callbacks } from "@/lib/db/callbacks";
import { company } from "@/lib/db/company";
import { withTenant } from "@/lib/db/with-tenant";
import type { Callback } from "@/lib/domain/callbacks";
import type { TenantScope } from "@/lib/domain/scope";
import { renderSheet } from "@/lib/reports/render-sheet";
import { acrossJobsSchema } from "@/lib/schemas/across-jobs";
import { comparison } from "./across-jobs";
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
    for (const by of MONTH_COMPARISONS)
      comparisons.push(await comparison(scope, { ...acrossJobsSchema.parse({}), by }));
    return {
      brand: await packetBrand(scope),
      paper: await brandPaper(scope),
      month: month ?? today.toFormat("yyyy-MM"),
      createdOn: today.toFormat("yyyy-MM-dd"),
      callbacks: await everyCallback(scope),
      comparisons,
    };
  });
  return { bytes: await renderSheet(monthView(parts)), fileName: `month-${parts.month}.pdf` };
}

const A_READ = 1_000;

/** All callbacks of the company, read some at a time. */
async function everyCallback(scope: TenantScope): Promise<readonly Callback[]> {
  const found: Callback[] = [];
  for (;;) {
    const some = await callbacks(scope).list(
      { jobId: null, state: null, kind: null },
      { take: A_READ, skip: found.length },
    );
    found.push(...some);
    if (some.length < A_READ) return found;
  }
}
