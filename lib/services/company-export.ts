import { once } from "node:events";
import { PassThrough, Readable } from "node:stream";
import { ZipFile } from "yazl";
import { company } from "@/lib/db/company";
import { type CompanyExport, companyExports } from "@/lib/db/company-exports";
import { type ExportedTable, readEverything } from "@/lib/db/everything";
import { withTenant } from "@/lib/db/with-tenant";
import { workItems } from "@/lib/db/work-items";
import { asId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { AppError } from "@/lib/errors";
import { endingOf } from "@/lib/files/sniff";
import { deleteStoredFile, readStoredFile, storeStream, streamStoredFile } from "@/lib/files/store";
import { csvText } from "@/lib/reports/csv";

const KEPT_DAYS = 7;
/** Their bytes are results of the export itself. */
const NO_FILES = ["company_export"];
const SHA256 = /^[0-9a-f]{64}$/;
type Target = { readonly zip: ZipFile; readonly signal: AbortSignal };
type Rows = AsyncIterable<readonly (readonly (string | null)[])[]>;

export type ExportsView = {
  readonly exports: readonly CompanyExport[];
  readonly making: boolean;
  readonly companyName: string;
  readonly timeZone: string;
};

/** What has been exported and can still be taken. */
export async function exportsView(scope: TenantScope, now = new Date()): Promise<ExportsView> {
  const [exports, work, own] = await Promise.all([
    companyExports(scope).list(now),
    workItems(scope).unfinished("export everything"),
    company(scope).get(),
  ]);
  return { exports, making: work !== null, companyName: own.name, timeZone: own.timeZone };
}

/** Takes exports whose week is over away: first the bytes, which nothing would name any more if this ended in between. */
export async function removeEndedExports(scope: TenantScope, now: Date): Promise<void> {
  for (const sha256 of await companyExports(scope).expired(now)) {
    await deleteStoredFile(scope.tenantId, sha256);
  }
  await companyExports(scope).removeExpired(now);
}

/** Asks for an archive of everything the company has. */
export function askForExport(scope: TenantScope): Promise<void> {
  return withTenant(scope, async () => {
    if ((await workItems(scope).unfinished("export everything")) !== null)
      throw new AppError("CONFLICT", "An export is being made already. It will stand in the list below.");
    const exportId = await companyExports(scope).add();
    await workItems(scope).add({
      task: "export everything",
      title: "Export of everything the company has",
      input: { exportId },
    });
  });
}

/**
 * Makes the archive: each table as CSV, all as of one moment, and each file as it was stored.
 *
 * @param report - Told how many files are in it.
 * @returns What is in it, in words.
 */
export async function makeExport(
  scope: TenantScope,
  exportId: string,
  report: (done: number, total: number) => Promise<void>,
  now = new Date(),
): Promise<string> {
  const zip = new ZipFile();
  const archive = Readable.from(zip.outputStream);
  const broken = new AbortController();
  // Each side waits for the other, so that the end of one must be the end of both.
  const kept = storeStream(scope.tenantId, archive).catch((error: unknown) => {
    broken.abort(error);
    throw error;
  });
  const filled = fill(scope, { zip, signal: broken.signal }, report, now).catch((error: Error) => {
    archive.destroy(error);
    throw error;
  });
  const [file, words] = await Promise.all([kept, filled]);
  const finished = new Date();
  await companyExports(scope).finish(
    asId<"company export">(exportId),
    file,
    finished,
    new Date(finished.getTime() + KEPT_DAYS * 86_400_000),
  );
  return words;
}

async function fill(
  scope: TenantScope,
  target: Target,
  report: (done: number, total: number) => Promise<void>,
  now: Date,
): Promise<string> {
  const files = new Set<string>();
  const counts = await readEverything(scope, (table, rows) => addTable(target, table, rows, files));
  await report(0, files.size);
  let missing = 0;
  for (const [at, sha256] of [...files].entries()) {
    const bytes = await readStoredFile(scope.tenantId, sha256).catch(() => null);
    if (bytes === null) {
      missing += 1;
      continue;
    }
    const name = `files/${sha256}${await endingOf(bytes)}`;
    await added(target, name, [bytes], false);
    if (at % 20 === 19) await report(at + 1, files.size);
  }
  const rows = [...counts.values()].reduce((sum, one) => sum + one, 0);
  const lost = missing === 0 ? "" : ` ${missing} files named in the tables are not there or damaged.`;
  const words = `${counts.size} tables with ${rows} rows, and ${files.size - missing} files.${lost}`;
  const { name } = await company(scope).get();
  target.zip.addBuffer(Buffer.from(readMe(name, now, words)), "READ ME.txt");
  target.zip.end();
  return words;
}

async function addTable(target: Target, table: ExportedTable, rows: Rows, files: Set<string>): Promise<void> {
  const hashes = table.columns.flatMap((name, at) =>
    /(sha256|storage_key)$/.test(name) && !NO_FILES.includes(table.name) ? [at] : [],
  );
  async function* texts() {
    yield csvText(table.columns, []);
    for await (const batch of rows) {
      for (const row of batch)
        for (const at of hashes) if (SHA256.test(row[at] ?? "")) files.add(row[at] ?? "");
      yield csvText([], batch);
    }
  }
  await added(target, `tables/${table.name}.csv`, texts(), true);
}

/** Writes one entry, as fast as the archive takes it, so that nothing piles up in memory. */
async function added(
  { zip, signal }: Target,
  name: string,
  parts: AsyncIterable<string> | Iterable<Uint8Array>,
  compress: boolean,
): Promise<void> {
  const stream = new PassThrough();
  zip.addReadStream(stream, name, { compress });
  for await (const part of parts) {
    if (!stream.write(part)) await once(stream, "drain", { signal });
  }
  stream.end();
  await once(stream, "end", { signal });
}

function readMe(companyName: string, now: Date, words: string): string {
  return [
    `Everything ${companyName} keeps in Dewledger, as of ${now.toISOString()}.`,
    words,
    "",
    "tables/  One CSV file a table (UTF-8, first row: names of the columns). Instants are in UTC. Lists and objects are JSON.",
    "         Text that a spreadsheet would run as a formula is led by an apostrophe. The columns *_id link the tables.",
    "files/   Photographs, reports, packets, logs, weather years and logos. A file's name is the SHA-256 of its bytes;",
    "         the columns *sha256 of the tables say which row it belongs to.",
    "",
    "Passwords and the secrets of links are not in it. It holds addresses and telephone numbers of customers: keep it safe.",
    "",
  ].join("\n");
}

/** The file of an export as a stream, once it is made and while it is kept. */
export async function takeExport(
  scope: TenantScope,
  exportId: string,
  now = new Date(),
): Promise<{
  readonly fileName: string;
  readonly size: number;
  readonly stream: ReadableStream<Uint8Array>;
}> {
  const { sha256, finishedAt } = await companyExports(scope).take(exportId, now);
  const file = await streamStoredFile(scope.tenantId, sha256);
  return { ...file, fileName: `everything-${finishedAt.toISOString().slice(0, 10)}.zip` };
}
