import { z } from "zod";
import { route } from "@/lib/server/route";
import { packedWeather } from "@/lib/services/weather-year";

/** The hours of the job's weather year, for a browser that runs forecasts. The address names their hash, so they never change. */
export const GET = route({
  name: "read weather year",
  permission: "job.read",
  schema: z.object({ jobId: z.uuid(), sha256: z.string().regex(/^[0-9a-f]{64}$/) }),
  run: async (scope, { jobId, sha256 }) =>
    new Response(await packedWeather(scope, jobId, sha256), {
      headers: {
        "content-type": "application/octet-stream",
        "cache-control": "private, max-age=31536000, immutable",
      },
    }),
});
