import { z } from "zod";
import { ROLES } from "@/lib/domain/roles";

const email = z
  .string()
  .trim()
  .toLowerCase()
  .pipe(z.email({ error: "E-mail: enter an address such as name@example.com." }));
const role = z.enum(ROLES, { error: "Role: choose owner, office manager or field tech." });
const userId = z.uuid({ error: "Choose a member from the list." });

export const inviteMemberSchema = z.strictObject({
  email,
  name: z
    .string()
    .trim()
    .min(1, { error: "Name is needed." })
    .max(120, { error: "Name is longer than 120 characters." }),
  role,
});
export type InviteMemberInput = z.output<typeof inviteMemberSchema>;

export const changeRoleSchema = z.strictObject({ userId, role });
export const memberSchema = z.strictObject({ userId });
export const invitationIdSchema = z.strictObject({ invitationId: z.uuid() });

export const joinSchema = z.strictObject({
  secret: z.string().min(20).max(200),
  password: z.string().max(500),
});
export const changePasswordSchema = z.strictObject({
  current: z.string().max(500),
  next: z.string().max(500),
});
export const chooseCompanySchema = z.strictObject({ tenantId: z.uuid() });
