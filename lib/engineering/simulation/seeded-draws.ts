/**
 * Draws for an ensemble: every number's range is cut into as many equal parts as there are draws, and each part is used once, so that
 * ten draws cover a range as evenly as ten can. The same seed gives the same draws everywhere.
 *
 * @param seed - A whole number, 0 to 4,294,967,295.
 * @param draws - 0 or more.
 * @param numbers - How many each draw holds, 0 or more.
 * @returns Draws of shares, each 0 to 1.
 * @see Latin hypercube sampling, McKay, Beckman & Conover 1979 (recalled); mulberry32 for the chance (public domain, recalled).
 */
export function seededDraws(seed: number, draws: number, numbers: number): readonly (readonly number[])[] {
  const next = seededChance(seed);
  const columns = Array.from({ length: numbers }, () => {
    const parts = Array.from({ length: draws }, (_, part) => part);
    for (let last = draws - 1; last > 0; last--) {
      const other = Math.floor(next() * (last + 1));
      const kept = parts[last] ?? 0;
      parts[last] = parts[other] ?? 0;
      parts[other] = kept;
    }
    return parts.map((part) => (part + next()) / draws);
  });
  return Array.from({ length: draws }, (_, draw) => columns.map((column) => column[draw] ?? 0.5));
}

/**
 * A small repeatable source of numbers: the same seed gives the same numbers everywhere.
 *
 * @param seed - A whole number, 0 to 4,294,967,295.
 * @returns A function that gives the next number, 0 to below 1, at each call.
 * @see mulberry32 (public domain, recalled).
 */
export function seededChance(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}
