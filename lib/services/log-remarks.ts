import { Readable } from "node:stream";
import { logs, MOST_REMARKS_SHOWN, type RowRemark } from "@/lib/db/logs";
import { asId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { notFound } from "@/lib/errors";
import { storeStream, streamStoredFile } from "@/lib/files/store";
import { csvText } from "@/lib/reports/csv";

const HEADINGS = ["Row", "What was not taken, or what was made of it"];

/** Keeps every remark as a file where there are more than are shown beside the log; `null` where all are shown. */
export async function keepRemarks(scope: TenantScope, remarks: readonly RowRemark[]): Promise<string | null> {
  if (remarks.length <= MOST_REMARKS_SHOWN) return null;
  const { sha256 } = await storeStream(scope.tenantId, Readable.from(csvParts(remarks)));
  return sha256;
}

/** Every remark on an import's rows, as CSV that a spreadsheet may open. */
export async function remarksCsv(
  scope: TenantScope,
  { jobId, importId }: { readonly jobId: string; readonly importId: string },
): Promise<ReadableStream<Uint8Array>> {
  const found = (await logs(scope).list(asId<"job">(jobId))).find(({ id }) => id === importId);
  if (!found) throw notFound();
  if (found.remarksKey !== null) return (await streamStoredFile(scope.tenantId, found.remarksKey)).stream;
  // Node's stream types and the web's describe the same object in two ways.
  return Readable.toWeb(Readable.from(csvParts(found.problems))) as ReadableStream<Uint8Array>;
}

const AT_ONCE = 5_000;

function* csvParts(remarks: readonly RowRemark[]): Generator<Buffer> {
  for (let from = 0; from === 0 || from < remarks.length; from += AT_ONCE) {
    const rows = remarks.slice(from, from + AT_ONCE).map(({ row, reason }) => [row === 0 ? "" : row, reason]);
    yield Buffer.from(csvText(from === 0 ? HEADINGS : [], rows));
  }
}
