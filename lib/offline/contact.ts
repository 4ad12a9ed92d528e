/*
 * When a phone speaks to the office. The soak with 200 techs does as is said here.
 */

/** While its page is looked at, a phone sends what waits and asks for news this often. */
export const MEET_EVERY_MS = 30_000;
/** A pause in typing before what was typed goes out. */
export const STILL_MS = 4_000;
/**
 * When the signal is back a phone in a pocket waits up to this long, by chance, so that a crew's phones do not all speak at
 * once. Who looks at it or goes on typing does not wait: both send at once.
 */
export const SPREAD_MS = 5_000;
