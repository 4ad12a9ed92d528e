import { EXPORTED, exportedJobs } from "@/lib/db/across-jobs-rows";
import type { TenantScope } from "@/lib/domain/scope";
import { csvText } from "@/lib/reports/csv";
import type { AcrossJobsQuery } from "@/lib/schemas/across-jobs";
import { filterOf } from "./across-jobs";

/** The jobs a question is about with their facts, as CSV, read while it is being sent. */
export function acrossJobsCsv(scope: TenantScope, query: AcrossJobsQuery): ReadableStream<Uint8Array> {
  const encoder = new TextEncoder();
  const rows = exportedJobs(scope, filterOf(query));
  let begun = false;
  return new ReadableStream({
    async pull(controller) {
      const { value, done } = await rows.next();
      const heads = begun ? [] : EXPORTED.map(([heading]) => heading);
      if (!begun || value) controller.enqueue(encoder.encode(csvText(heads, value ?? [])));
      begun = true;
      if (done) controller.close();
    },
  });
}
