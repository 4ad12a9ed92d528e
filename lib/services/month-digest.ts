import { callbacks } from "@/lib/db/callbacks";
import { monthDigests } from "@/lib/db/month-digests";
import { withTenant } from "@/lib/db/with-tenant";
import { isUuid } from "@/lib/domain/ids";
import type { KeptMonth } from "@/lib/domain/month-digest";
import type { TenantScope } from "@/lib/domain/scope";
import { notFound } from "@/lib/errors";
import { readStoredFile, storeFile } from "@/lib/files/store";
import { pagesOf, renderView } from "@/lib/reports/render-view";
import { rendererName } from "@/lib/reports/renderer";
import type { SheetView } from "@/lib/reports/sheet/view";
import { acrossJobsSchema } from "@/lib/schemas/across-jobs";
import { comparison } from "./across-jobs";
import { brandPaper, packetBrand } from "./brand";
import { companyToday } from "./company-today";
import { hashOfView, keepView } from "./kept-view";
import { MONTH_COMPARISONS, MONTH_ROWS, type MonthParts, monthView } from "./packet-views/month";

/** A digest with its bytes, to look at or to send. */
export type MonthFile = { readonly id: string; readonly bytes: Uint8Array; readonly fileName: string };

/**
 * The owner's digest of a month, on at most two pages; of the running month where none is named. It is kept with its
 * hash. While nothing has changed it is the digest that exists; otherwise the next revision.
 */
export function monthDigest(scope: TenantScope, month: string | null, now = new Date()): Promise<MonthFile> {
  return withTenant(scope, async () => {
    const today = await companyToday(scope, now);
    const shown = month ?? today.slice(0, 7);
    await monthDigests(scope).lock(shown);
    const parts = await monthParts(scope, shown);
    const [newest] = await monthDigests(scope).list(shown);
    const inputsHash = hashOfView(monthView(parts));
    if (newest?.inputsHash === inputsHash) return fileOf(scope, newest);
    const revision = (newest?.revision ?? 0) + 1;
    const { view, bytes } = await monthOnTwoPages({ ...parts, createdOn: today, revision });
    const { sha256, size } = await storeFile(scope.tenantId, bytes, "packet", "month");
    const id = await monthDigests(scope).add({
      month: shown,
      revision,
      paper: parts.paper,
      sha256,
      inputsHash,
      viewSha256: await keepView(scope.tenantId, view),
      renderer: rendererName(),
      sizeBytes: size,
      pages: pagesOf(bytes),
    });
    return { id, bytes, fileName: fileName(shown, revision) };
  });
}

/** The month with as many rows as its two pages hold. */
export async function monthOnTwoPages(parts: MonthParts) {
  let printed: { readonly view: SheetView; readonly bytes: Uint8Array } | null = null;
  for (const rows of MONTH_ROWS) {
    const view = monthView(parts, rows);
    printed = { view, bytes: await renderView(view) };
    if (pagesOf(printed.bytes) <= MOST_PAGES) return printed;
  }
  if (printed === null) throw new Error("A month has rows.");
  return printed;
}

const MOST_PAGES = 2;

/** Every digest made, the newest month first. */
export function listMonths(scope: TenantScope): Promise<readonly KeptMonth[]> {
  return monthDigests(scope).list();
}

/** The bytes of a digest as they were made. */
export async function readMonth(scope: TenantScope, digestId: string): Promise<MonthFile> {
  const found = isUuid(digestId) ? (await listMonths(scope)).find((one) => one.id === digestId) : undefined;
  if (!found) throw notFound();
  return fileOf(scope, found);
}

async function fileOf(scope: TenantScope, { id, month, revision, sha256 }: KeptMonth): Promise<MonthFile> {
  return { id, bytes: await readStoredFile(scope.tenantId, sha256), fileName: fileName(month, revision) };
}

const fileName = (month: string, revision: number) => `month-${month}-${revision}.pdf`;

/** What the month holds, blank where the sheet names day and number. */
async function monthParts(scope: TenantScope, month: string): Promise<MonthParts> {
  const comparisons: MonthParts["comparisons"][number][] = [];
  // One after the other: inside one transaction they share one connection.
  for (const by of MONTH_COMPARISONS)
    comparisons.push(await comparison(scope, { ...acrossJobsSchema.parse({}), by }));
  const any = { jobId: null, state: null, kind: null };
  const reported = { ...any, reportedIn: month };
  const ofMonth = await callbacks(scope).count(reported);
  return {
    brand: await packetBrand(scope),
    paper: await brandPaper(scope),
    month,
    createdOn: "",
    revision: 0,
    reported: await callbacks(scope).list(reported, { take: ofMonth, skip: 0 }),
    waiting:
      (await callbacks(scope).count({ ...any, state: "open" })) +
      (await callbacks(scope).count({ ...any, state: "fixed" })),
    comparisons,
  };
}
