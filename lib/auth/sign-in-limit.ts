import { createHash } from "node:crypto";
import { unscopedRateLimit } from "@/lib/db/unscoped/rate-limit";

/** Per person: stops guessing one password. Per address: stops trying one password on many people. */
const LIMITS = {
  person: { points: 8, seconds: 15 * 60 },
  address: { points: 60, seconds: 15 * 60 },
  link: { points: 30, seconds: 15 * 60 },
} as const;

export async function signInIsBlocked(email: string, address: string): Promise<boolean> {
  const [person, place] = await Promise.all([used("person", email), used("address", address)]);
  return person >= LIMITS.person.points || place >= LIMITS.address.points;
}

export async function countSignInFailure(email: string, address: string): Promise<void> {
  await Promise.all([count("person", email), count("address", address)]);
}

export async function clearSignInFailures(email: string): Promise<void> {
  await unscopedRateLimit.clear(keyOf("person", email));
}

/** Counts a try of a one-time link from an address; true when there were too many. */
export async function linkTriesExceeded(address: string): Promise<boolean> {
  return (await count("link", address)) > LIMITS.link.points;
}

const used = (kind: keyof typeof LIMITS, who: string) => unscopedRateLimit.used(keyOf(kind, who));
const count = (kind: keyof typeof LIMITS, who: string) =>
  unscopedRateLimit.count(keyOf(kind, who), LIMITS[kind].seconds);

/** Hashed, so that the counters hold no addresses of people. */
function keyOf(kind: string, who: string): string {
  return `${kind}:${createHash("sha256").update(who).digest("hex").slice(0, 32)}`;
}
