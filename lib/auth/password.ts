import { hash, verify } from "@node-rs/argon2";
import type { FieldProblem } from "@/lib/domain/problems";

/** argon2id with the parameters OWASP's password storage cheat sheet gives as a minimum (19 MiB, 2 passes). */
const ARGON2ID = { algorithm: 2, memoryCost: 19_456, timeCost: 2, parallelism: 1 } as const;

export const MIN_PASSWORD_LENGTH = 10;

export function hashPassword(password: string): Promise<string> {
  return hash(password, ARGON2ID);
}

let decoy: Promise<string> | null = null;

/**
 * True when the password fits. For a person who does not exist the same work is done on a decoy, so
 * that the time of the answer does not tell whether an address is known.
 */
export async function passwordFits(storedHash: string | null, password: string): Promise<boolean> {
  decoy ??= hashPassword("no one has this password");
  const fits = await verify(storedHash ?? (await decoy), password);
  return storedHash !== null && fits;
}

/** What is wrong with a new password, or `null`. */
export function passwordProblem(field: string, password: string): FieldProblem | null {
  if (password.length < MIN_PASSWORD_LENGTH) {
    return {
      field,
      message: `Use at least ${MIN_PASSWORD_LENGTH} characters; a few words in a row are fine.`,
    };
  }
  if (password.length > 200) return { field, message: "Use at most 200 characters." };
  return null;
}
