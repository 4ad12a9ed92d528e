import { type Doors, NO_CONNECTION, type NotDone } from "./doors";
import type { WaitingSignOut } from "./owner";

/**
 * The same doors for a phone whose person pressed "Sign out" without a signal: at the next contact the sign-in is ended before
 * anybody's jobs are asked for, or the phone would show them again.
 */
export function afterSigningOut(doors: Doors, waits: WaitingSignOut, signOut: () => Promise<boolean>): Doors {
  const notYet: NotDone = { done: false, why: "later", message: NO_CONNECTION };
  return {
    ...doors,
    readBundle: async (...asked) => {
      if (waits.get()) {
        if (!(await signOut())) return notYet;
        waits.set(false);
      }
      return doors.readBundle(...asked);
    },
  };
}

/** Ends the sign-in at the server. False when it could not be reached. */
export async function signOutAtServer(
  ask: typeof fetch = (input, init) => fetch(input, init),
): Promise<boolean> {
  try {
    const { csrfToken } = await (await ask("/api/auth/csrf")).json();
    const answer = await ask("/api/auth/signout", {
      method: "POST",
      headers: { "content-type": "application/x-www-form-urlencoded" },
      body: new URLSearchParams({ csrfToken, json: "true" }),
    });
    return answer.ok;
  } catch {
    return false;
  }
}
