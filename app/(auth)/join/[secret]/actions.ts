"use server";

import { joinSchema } from "@/lib/schemas/people";
import { publicAction } from "@/lib/server/public-action";
import { acceptInvitation } from "@/lib/services/people";

/** Uses an invitation. The link's secret is the proof, so there is no sign-in before it. */
export const join = publicAction({
  name: "join",
  schema: joinSchema,
  run: (input) => acceptInvitation(input),
});
