import { z } from "zod";
import { API_ACCESS_KEYS, API_TOKEN_DAYS_KEYS } from "@/lib/domain/api-tokens";

export const makeApiTokenSchema = z.strictObject({
  name: z
    .string({ error: "Name: say what will use the token." })
    .trim()
    .min(1, { error: "Name: say what will use the token." })
    .max(80, { error: "Name is longer than 80 characters. Shorten it." }),
  access: z.enum(API_ACCESS_KEYS, { error: "May: choose one." }),
  days: z.enum(API_TOKEN_DAYS_KEYS, { error: "Works for: choose one from the list." }),
});
export type MakeApiTokenInput = z.output<typeof makeApiTokenSchema>;

export const apiTokenIdSchema = z.strictObject({
  tokenId: z.uuid({ error: "Choose a token from the list." }),
});
