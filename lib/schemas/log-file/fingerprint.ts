const MOST = 2_000;

/** What a logger's next file is recognised by: its headings, without regard to case and spaces around them. */
export function headerFingerprint(headings: readonly string[]): string {
  return headings
    .map((heading) => heading.trim().toLowerCase())
    .join(" | ")
    .slice(0, MOST);
}
