export const OWNER_KEY = "dewledger-field-owner";

/**
 * Whose work the field screens show. Only a name for the drawer: without it nothing is shown, and what is in
 * the drawers stays. Signing in or out, or changing the company, takes it away until the server says who it is.
 */
export const phoneOwner = {
  get: (): string | null => localStorage.getItem(OWNER_KEY),
  set: (who: string | null): void => {
    if (who === null) localStorage.removeItem(OWNER_KEY);
    else localStorage.setItem(OWNER_KEY, who);
  },
};

/** A sign-out that could not reach the server, remembered until it can. */
export type WaitingSignOut = { readonly get: () => boolean; readonly set: (waits: boolean) => void };

export const SIGN_OUT_KEY = "dewledger-field-signing-out";

/** Signing in takes it away: it was meant for whoever was signed in before. */
export const waitingSignOut: WaitingSignOut = {
  get: () => localStorage.getItem(SIGN_OUT_KEY) !== null,
  set: (waits) => {
    if (waits) localStorage.setItem(SIGN_OUT_KEY, "yes");
    else localStorage.removeItem(SIGN_OUT_KEY);
  },
};

/** How much of each person's work was not with the office when last looked at; beside the store, so that it tells when that was emptied. */
export type UnsentNote = {
  readonly get: (who: string) => number;
  readonly set: (who: string, count: number) => void;
};

const UNSENT_KEY = "dewledger-field-unsent";

export const unsentNote: UnsentNote = {
  get: (who) => Number(localStorage.getItem(`${UNSENT_KEY}.${who}`)),
  set: (who, count) => {
    if (count === 0) localStorage.removeItem(`${UNSENT_KEY}.${who}`);
    else localStorage.setItem(`${UNSENT_KEY}.${who}`, String(count));
  },
};
