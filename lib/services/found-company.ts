import { randomInt } from "node:crypto";
import { hashPassword } from "@/lib/auth/password";
import { unscopedFoundCompany, unscopedSignInUser } from "@/lib/db/unscoped/people";
import { problemsOf } from "@/lib/domain/problems";
import { invalidInput } from "@/lib/errors";
import { type FoundCompanyInput, foundCompanySchema } from "@/lib/schemas/people";

/** Easy to read out and to type: no letters that look alike. */
const LETTERS = "abcdefghjkmnpqrstuvwxyz23456789";

/**
 * Founds a company with its first owner, who then invites everybody else.
 *
 * @returns The owner's first password, to be changed at *Your account*; `null` for one who already signs in here.
 * @throws AppError `INVALID_INPUT` naming each field.
 */
export async function foundCompany(input: FoundCompanyInput): Promise<string | null> {
  const parsed = foundCompanySchema.safeParse(input);
  if (!parsed.success) throw invalidInput(problemsOf(parsed.error));
  const { companyName, timeZone, email, name } = parsed.data;
  const isKnown = (await unscopedSignInUser(email)) !== null;
  const password = firstPassword();
  await unscopedFoundCompany({
    companyName,
    timeZone,
    owner: { email, name, passwordHash: await hashPassword(password) },
  });
  return isKnown ? null : password;
}

/** Four groups of four: 79 bits of chance. */
function firstPassword(): string {
  const group = () => Array.from({ length: 4 }, () => LETTERS[randomInt(LETTERS.length)]).join("");
  return Array.from({ length: 4 }, group).join("-");
}
