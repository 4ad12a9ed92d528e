/**
 * Founds a company with its first owner and prints the owner's first password: how a deployment begins.
 *
 *     DATABASE_URL=… NEXTAUTH_SECRET=… npx tsx prisma/found-company.ts "Levee Road Comfort" America/Chicago owner@example.com "Pat Example"
 */
import { closeDatabase } from "@/lib/db/client";
import { AppError } from "@/lib/errors";
import { foundCompany } from "@/lib/services/found-company";

const [companyName = "", timeZone = "", email = "", name = ""] = process.argv.slice(2);
try {
  const password = await foundCompany({ companyName, timeZone, email, name });
  process.stdout.write(
    password === null
      ? `${companyName} is founded. ${email} signs in with the password they have.\n`
      : `${companyName} is founded. ${email} signs in with ${password} and changes it at “Your account”.\n`,
  );
} catch (error) {
  if (!(error instanceof AppError)) throw error;
  process.stderr.write(`${error.fields.map(({ message }) => message).join("\n")}\n`);
  process.exitCode = 1;
} finally {
  await closeDatabase();
}
