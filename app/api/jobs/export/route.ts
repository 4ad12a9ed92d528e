import { jobListSchema } from "@/lib/schemas/job";
import { route } from "@/lib/server/route";
import { jobsCsv } from "@/lib/services/job-table";

/** The jobs a question of the table finds, all of them, as CSV. */
export const GET = route({
  name: "export jobs",
  permission: "job.read",
  schema: jobListSchema,
  run: async (scope, query) => {
    const text = jobsCsv(scope, query);
    const encoder = new TextEncoder();
    const body = new ReadableStream<Uint8Array>({
      pull: async (controller) => {
        const { value, done } = await text.next();
        if (done) controller.close();
        else controller.enqueue(encoder.encode(value));
      },
    });
    return new Response(body, {
      headers: {
        "content-type": "text/csv; charset=utf-8",
        "content-disposition": 'attachment; filename="jobs.csv"',
        "cache-control": "no-store",
      },
    });
  },
});
