import { z } from "zod";
import { handOverSchema } from "@/lib/schemas/field";
import { readJson } from "@/lib/server/json-body";
import { route } from "@/lib/server/route";
import { handOver } from "@/lib/services/hand-over";

/** Takes unsent readings of somebody who may not see the job any more. Safe to repeat; gives nothing back. */
export const POST = route({
  name: "hand over readings",
  permission: "startup.fill",
  forDevice: "also who left",
  schema: z.object({}),
  run: async (scope, _input, request) =>
    handOver(scope, handOverSchema.parse(await readJson(request, 200_000, "jobs"))),
});
