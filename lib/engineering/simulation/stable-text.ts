/**
 * A result as text that is the same for the same numbers, wherever it was computed: keys in order, typed arrays as lists. Hash it to
 * compare a result from the browser with one from the server.
 *
 * @param value - Plain data: numbers, texts, lists, typed arrays, objects, `null`.
 * @returns JSON.
 * @throws {@link TypeError} for what JSON cannot hold.
 * @see ECMA-404; numbers as the shortest text that reads back the same (ECMA-262).
 */
export function stableText(value: unknown): string {
  return JSON.stringify(value, (_key, part: unknown) => {
    if (ArrayBuffer.isView(part)) return Array.from(part as Float64Array);
    if (typeof part !== "object" || part === null || Array.isArray(part)) return part;
    return Object.fromEntries(Object.entries(part).sort(([a], [b]) => (a < b ? -1 : 1)));
  });
}
