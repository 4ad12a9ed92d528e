/** Told on the window, because any form may hear it from the server and one part of the page answers it. */
const ENDED = "dewledger:sign-in-ended";
const BACK = "dewledger:signed-in-again";

/** Codes of answers after which only signing in again as oneself helps. */
const ENDINGS: ReadonlySet<unknown> = new Set(["NOT_SIGNED_IN", "OTHER_PERSON"]);

/**
 * Passes on what a server action answered. When it says that the sign-in has ended, the page asks for it on the
 * spot, so that nothing typed has to be left behind.
 */
export function heard<A extends { readonly ok: boolean }>(answer: A): A {
  const isEnded = !answer.ok && "code" in answer && ENDINGS.has(answer.code);
  if (isEnded) window.dispatchEvent(new Event(ENDED));
  return answer;
}

/** Calls when a form heard that the sign-in has ended. Returns how to stop. */
export function onSignInEnded(tell: () => void): () => void {
  window.addEventListener(ENDED, tell);
  return () => window.removeEventListener(ENDED, tell);
}

/** Says that the same person is signed in again: what was not saved can be. */
export function signedInAgain(): void {
  window.dispatchEvent(new Event(BACK));
}

/** Calls when saving may work again: the person signed in again, or the connection is back. Returns how to stop. */
export function onBack(retry: () => void): () => void {
  window.addEventListener(BACK, retry);
  window.addEventListener("online", retry);
  return () => {
    window.removeEventListener(BACK, retry);
    window.removeEventListener("online", retry);
  };
}
