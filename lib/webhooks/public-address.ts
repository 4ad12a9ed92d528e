import ipaddr from "ipaddr.js";

/** All of the internet's own IPv6 space that is given out (IANA, 2000::/3; recalled). */
const GLOBAL_IPV6 = ipaddr.parseCIDR("2000::/3") as [ipaddr.IPv6, number];

/**
 * True for an address of the open internet. An allow-list: whatever is private, loopback, link-local, shared, multicast,
 * reserved, or an IPv4 address in an IPv6 one, is not. An address that does not parse is not either.
 */
export function isPublicAddress(address: string): boolean {
  // No zone (`fe80::1%eth0`), no short or octal forms that some resolver reads in another way.
  if (!ipaddr.IPv6.isValid(address) && !ipaddr.IPv4.isValidFourPartDecimal(address)) return false;
  const read = ipaddr.parse(address);
  if (read.range() !== "unicast") return false;
  return read.kind() === "ipv4" || (read as ipaddr.IPv6).match(GLOBAL_IPV6);
}

/** What is wrong with a webhook's address, in words, or `null`. What its name leads to is asked at each delivery. */
export function addressProblem(text: string): string | null {
  const url = URL.canParse(text) ? new URL(text) : null;
  if (url?.protocol !== "https:") return "Address: give one that begins with https://.";
  if (url.username !== "" || url.password !== "")
    return "Address: leave user and password out; deliveries are signed.";
  if (url.port !== "") return "Address: leave the port out; only the usual one of https is called.";
  if (url.hash !== "") return "Address: leave out # and what follows.";
  const host = url.hostname.replace(/^\[|\]$/g, "");
  const isNumber = host.includes(":") || /^[\d.]+$/.test(host);
  if (isNumber ? !isPublicAddress(host) : !isOpenName(host))
    return "Address: this names something inside a network. Give one that can be reached from the internet.";
  return null;
}

/** Names that never stand for anything outside (RFC 6761, RFC 8375, RFC 6762; recalled). */
const INSIDE = /(^|\.)(localhost|local|internal|intranet|lan|home|corp|home\.arpa|test|invalid|onion)\.?$/i;

const isOpenName = (host: string) => host.includes(".") && !INSIDE.test(host);
