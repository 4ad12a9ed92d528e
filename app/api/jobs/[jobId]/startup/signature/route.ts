import { z } from "zod";
import { signOnPhoneSchema } from "@/lib/schemas/field";
import { readJson } from "@/lib/server/json-body";
import { route } from "@/lib/server/route";
import { signStartupFromPhone } from "@/lib/services/sign-startup";

/** Takes a signature that was given without network. Safe to repeat. */
export const PUT = route({
  name: "sign startup from phone",
  permission: "startup.sign",
  forDevice: true,
  schema: z.object({ jobId: z.uuid() }),
  run: async (scope, { jobId }, request) =>
    signStartupFromPhone(scope, {
      jobId,
      ...signOnPhoneSchema.parse(await readJson(request, 20_000, "signatureName")),
    }),
});
