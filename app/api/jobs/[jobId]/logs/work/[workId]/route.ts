import { z } from "zod";
import { route } from "@/lib/server/route";
import { cancelLogImport, logImportProgress } from "@/lib/services/log-queue";

const schema = z.object({ jobId: z.uuid(), workId: z.uuid() });

/** How the reading of an uploaded log is getting on. */
export const GET = route({
  name: "follow log import",
  permission: "log.upload",
  schema,
  run: (scope, asked) => logImportProgress(scope, asked),
});

/** Stops the reading of an uploaded log. */
export const DELETE = route({
  name: "cancel log import",
  permission: "log.upload",
  schema,
  run: (scope, asked) => cancelLogImport(scope, asked),
});
