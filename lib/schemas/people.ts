import { z } from "zod";
import { ROLES } from "@/lib/domain/roles";

const email = z
  .string()
  .trim()
  .toLowerCase()
  .pipe(z.email({ error: "E-mail: enter an address such as name@example.com." }));
const role = z.enum(ROLES, { error: "Role: choose owner, office manager or field tech." });
const name = z
  .string()
  .trim()
  .min(1, { error: "Name is needed." })
  .max(120, { error: "Name is longer than 120 characters." });
const userId = z.uuid({ error: "Choose a member from the list." });

export const inviteMemberSchema = z.strictObject({
  email,
  name,
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

/** What begins a company: its name, the clock its days are counted by, and its first owner. */
export const foundCompanySchema = z.strictObject({
  companyName: z
    .string()
    .trim()
    .min(1, { error: "Company: its name is needed." })
    .max(120, { error: "Company: the name is longer than 120 characters." }),
  timeZone: z.string().refine((zone) => zone !== "" && isTimeZone(zone), {
    error: "Time zone: write it as America/Chicago or Pacific/Honolulu.",
  }),
  email,
  name,
});
export type FoundCompanyInput = z.input<typeof foundCompanySchema>;

function isTimeZone(zone: string): boolean {
  try {
    new Intl.DateTimeFormat("en-US", { timeZone: zone });
    return true;
  } catch {
    return false;
  }
}
