import { env } from "@/lib/env";

/** Stands for everybody when no proxy says where a request comes from. */
export const UNKNOWN_ADDRESS = "unknown";

/**
 * Where a request comes from, as the outermost proxy of our own saw it. Each proxy adds one address at the end of
 * `x-forwarded-for`; whatever stands before those of our own is what the sender wrote and may be invented.
 * Without a proxy of our own nothing in it can be believed (Next hands no socket on), so that all are counted as one.
 */
export function clientAddress(forwardedFor: string | null | undefined): string {
  const proxies = env().TRUSTED_PROXIES;
  if (proxies === 0) return UNKNOWN_ADDRESS;
  const hops = (forwardedFor ?? "").split(",").map((one) => one.trim());
  return hops.at(-proxies) || UNKNOWN_ADDRESS;
}
