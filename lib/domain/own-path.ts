const OWN = "http://own.invalid";

/**
 * A path of this application that an address asks to be led to; the start page for anything else. Read as a browser reads
 * it, which leaves out tabs and line breaks and takes `\` for `/`: only then is it known whose page it is.
 */
export function ownPath(asked: string | undefined): string {
  if (!asked?.startsWith("/") || !URL.canParse(asked, OWN)) return "/";
  const { origin, pathname, search, hash } = new URL(asked, OWN);
  return origin === OWN && !pathname.startsWith("//") ? `${pathname}${search}${hash}` : "/";
}
