import { randomUUID } from "node:crypto";
import type { JobFile } from "@/lib/domain/field-bundle";
import type { TenantScope } from "@/lib/domain/scope";
import { notFound } from "@/lib/errors";
import { FILE_KINDS } from "@/lib/files/kinds";
import { sha256Of } from "@/lib/files/store";
import { addFile, type FileBytes, listFiles, readFile, removeFile } from "./attachments";

/** How large a report may be, and what to send instead. */
export const REPORT_LIMITS = FILE_KINDS.report;

/** The designer's reports of a job, oldest first. */
export async function listReports(scope: TenantScope, jobId: string): Promise<readonly JobFile[]> {
  return (await listFiles(scope, jobId)).filter((file) => file.kind === "report");
}

/** Keeps a designer's report beside the load summary. The same bytes sent twice are one report. */
export async function addReport(
  scope: TenantScope,
  {
    jobId,
    fileName,
    bytes,
  }: { readonly jobId: string; readonly fileName: string; readonly bytes: Uint8Array },
): Promise<JobFile> {
  const sha256 = sha256Of(bytes);
  const same = (await listReports(scope, jobId)).find((report) => report.sha256 === sha256);
  return (
    same ??
    addFile(scope, {
      jobId,
      id: randomUUID(),
      kind: "report",
      stage: "load_summary",
      fileName,
      bytes,
      details: { sha256, caption: "" },
    })
  );
}

/** A report as it came. */
export async function readReport(scope: TenantScope, jobId: string, id: string): Promise<FileBytes> {
  await getReport(scope, jobId, id);
  return readFile(scope, jobId, id, "original");
}

/** Takes a report out of sight; row and bytes stay for the trail. */
export async function removeReport(scope: TenantScope, jobId: string, id: string): Promise<void> {
  await getReport(scope, jobId, id);
  await removeFile(scope, jobId, id);
}

async function getReport(scope: TenantScope, jobId: string, id: string): Promise<JobFile> {
  const report = (await listReports(scope, jobId)).find((one) => one.id === id.toLowerCase());
  if (!report) throw notFound();
  return report;
}
