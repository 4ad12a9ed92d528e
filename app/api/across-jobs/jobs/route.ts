import { acrossJobsSchema } from "@/lib/schemas/across-jobs";
import { route } from "@/lib/server/route";
import { acrossJobsCsv } from "@/lib/services/across-jobs-csv";

/** The jobs a question is about, with their facts, as CSV. */
export const GET = route({
  name: "export across jobs",
  permission: "across-jobs.read",
  schema: acrossJobsSchema,
  run: async (scope, query) =>
    new Response(acrossJobsCsv(scope, query), {
      headers: {
        "content-type": "text/csv; charset=utf-8",
        "content-disposition": 'attachment; filename="jobs-with-facts.csv"',
        "cache-control": "private, no-store",
      },
    }),
});
