import { UNKNOWN_ADDRESS } from "@/lib/auth/client-address";
import { passwordFits } from "@/lib/auth/password";
import { forgetSignInTry, takeSignInTry } from "@/lib/auth/sign-in-limit";
import { unscopedPasswordOf } from "@/lib/db/unscoped/people";
import type { FieldProblem } from "@/lib/domain/problems";
import { AppError, invalidInput } from "@/lib/errors";

/**
 * Asks somebody for the password they have. Wrong ones count with those of the sign-in page: whoever finds an open
 * screen guesses no longer than whoever stands at the door.
 *
 * @param whenWrong what to say, and beside which field
 * @throws AppError `INVALID_INPUT` with `whenWrong`; `TOO_MANY_TRIES` after too many; `NOT_SIGNED_IN` for nobody.
 */
export async function provePassword(
  who: Parameters<typeof unscopedPasswordOf>[0],
  password: string,
  whenWrong: FieldProblem,
): Promise<void> {
  const stored = await unscopedPasswordOf(who);
  if (!stored) throw new AppError("NOT_SIGNED_IN", "Sign in first.");
  if (!(await takeSignInTry(stored.email, UNKNOWN_ADDRESS)))
    throw new AppError("TOO_MANY_TRIES", "Too many wrong passwords. Try again in 15 minutes.");
  if (!(await passwordFits(stored.passwordHash, password))) throw invalidInput([whenWrong]);
  await forgetSignInTry(stored.email, UNKNOWN_ADDRESS);
}
