import { createHash } from "node:crypto";
import { z } from "zod";
import { company } from "@/lib/db/company";
import { members } from "@/lib/db/members";
import { unscopedEraseCompany } from "@/lib/db/unscoped/erase-company";
import type { TenantScope } from "@/lib/domain/scope";
import { invalidInput } from "@/lib/errors";
import { deleteAllStoredFiles } from "@/lib/files/store";
import { sendMail } from "@/lib/mail/send-mail";
import type { DeleteCompanyInput } from "@/lib/schemas/company";
import { provePassword } from "./prove-password";

/**
 * Deletes a company with everything it has: for good, at once, and its people's sign-ins with it unless they belong to
 * another company. Its owners are told by mail.
 *
 * @throws AppError `INVALID_INPUT` naming what does not fit; `TOO_MANY_TRIES` after too many wrong passwords.
 */
export async function deleteCompany(scope: TenantScope, input: DeleteCompanyInput): Promise<void> {
  const { name } = await company(scope).get();
  if (input.companyName.trim() !== name) {
    throw invalidInput([{ field: "companyName", message: `Type the name as it is written here: ${name}` }]);
  }
  const people = await members(scope).list();
  await provePassword({ userId: scope.userId }, input.password, {
    field: "password",
    message: "This is not your password. Nothing was deleted.",
  });
  const by = people.find((one) => one.userId === scope.userId)?.name ?? "";
  await unscopedEraseCompany(
    scope,
    people
      .filter((one) => one.role === "owner")
      .map((owner) => ({
        to: owner.email,
        subject: `${name} was deleted from Dewledger`.replaceAll(/\s+/g, " "),
        text: `${by} deleted ${name} with all its jobs, records, logs, packets and files. Private links that were sent no longer open. Nothing is left that could be brought back.`,
      })),
  );
  // Gone is gone: what fails from here on the queue does.
  await deleteAllStoredFiles(scope.tenantId).catch(() => undefined);
}

const leftSchema = z.union([
  z.strictObject({ filesOf: z.uuid() }),
  z.strictObject({ mail: z.strictObject({ to: z.string(), subject: z.string(), text: z.string() }) }),
]);

/** Does one piece of what {@link deleteCompany} leaves to the queue. Safe to repeat. */
export async function finishDeletion(payload: unknown): Promise<void> {
  const left = leftSchema.parse(payload);
  if ("filesOf" in left) return deleteAllStoredFiles(left.filesOf);
  const id = createHash("sha256").update(JSON.stringify(left.mail)).digest("hex");
  await sendMail({ ...left.mail, id });
}
