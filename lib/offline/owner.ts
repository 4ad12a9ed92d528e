const KEY = "dewledger-field-owner";

/**
 * Whose work the field screens show. Only a name for the drawer: without it nothing is shown, and what is in
 * the drawers stays. Signing in or out, or changing the company, takes it away until the server says who it is.
 */
export const phoneOwner = {
  get: (): string | null => localStorage.getItem(KEY),
  set: (who: string | null): void => {
    if (who === null) localStorage.removeItem(KEY);
    else localStorage.setItem(KEY, who);
  },
};
