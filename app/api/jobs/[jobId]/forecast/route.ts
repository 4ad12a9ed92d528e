import { forecastOrderSchema } from "@/lib/schemas/forecast";
import { route } from "@/lib/server/route";
import { forecastOnServer } from "@/lib/services/server-forecast";

/** The options' forecast run here, one line of JSON an event, for a browser without workers. Ends when the asker goes away. */
export const GET = route({
  name: "run forecast",
  permission: "job.read",
  schema: forecastOrderSchema,
  run: async (scope, order, request) =>
    new Response(await forecastOnServer(scope, order, request.signal), {
      headers: { "content-type": "application/x-ndjson", "cache-control": "private, no-store" },
    }),
});
