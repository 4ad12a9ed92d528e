import { createHash } from "node:crypto";
import { unscopedRateLimit } from "@/lib/db/unscoped/rate-limit";
import { UNKNOWN_ADDRESS } from "./client-address";

/** Per person: stops guessing one password. Per address: stops trying one password on many people. */
const LIMITS = {
  person: { points: 8, seconds: 15 * 60 },
  address: { points: 60, seconds: 15 * 60 },
  link: { points: 30, seconds: 15 * 60 },
  packet: { points: 30, seconds: 15 * 60 },
} as const;

/**
 * Counts a try to sign in and answers whether it may be made. Counted before the password is looked at, so
 * that tries sent at the same moment count each other.
 *
 * @param device - From {@link knownDevice}: its tries are counted apart from everybody else's at this person.
 */
export async function takeSignInTry(
  email: string,
  address: string,
  device: string | null = null,
): Promise<boolean> {
  if (device !== null) return (await count("person", `${email} ${device}`)) <= LIMITS.person.points;
  // The address first: one that has tried too often names no more people, each of whom would be a counter to keep.
  if ((await count("address", address)) > most("address", address)) return false;
  if ((await count("person", email)) <= LIMITS.person.points) return true;
  await unscopedRateLimit.takeBack(keyOf("address", address));
  return false;
}

/** Takes back what a right password counted: only failures shall use tries up. */
export async function forgetSignInTry(
  email: string,
  address: string,
  device: string | null = null,
): Promise<void> {
  if (device !== null) return unscopedRateLimit.clear(keyOf("person", `${email} ${device}`));
  await Promise.all([
    unscopedRateLimit.clear(keyOf("person", email)),
    unscopedRateLimit.takeBack(keyOf("address", address)),
  ]);
}

/** Counts a try of a one-time link from an address; true when there were too many. */
export async function linkTriesExceeded(address: string): Promise<boolean> {
  return (await count("link", address)) > most("link", address);
}

/** Counts a try of a packet's link; true when this address has guessed too often. */
export async function packetGuessesExceeded(address: string): Promise<boolean> {
  return (await count("packet", address)) > most("packet", address);
}

/** Takes back what a right link counted: only guesses shall use tries up. */
export function forgetPacketGuess(address: string): Promise<void> {
  return unscopedRateLimit.takeBack(keyOf("packet", address));
}

/**
 * Where all addresses are counted as one, one stranger must not lock everybody out at once. A link has 256 bits, which
 * nobody guesses however often they try: there the count would only shut out those who hold one.
 */
function most(kind: "address" | "link" | "packet", address: string): number {
  if (address !== UNKNOWN_ADDRESS) return LIMITS[kind].points;
  return kind === "address" ? LIMITS.address.points * 10 : Number.POSITIVE_INFINITY;
}

const count = (kind: keyof typeof LIMITS, who: string) =>
  unscopedRateLimit.count(keyOf(kind, who), LIMITS[kind].seconds);

/** Hashed, so that the counters hold no addresses of people. */
function keyOf(kind: string, who: string): string {
  return `${kind}:${createHash("sha256").update(who).digest("hex").slice(0, 32)}`;
}
