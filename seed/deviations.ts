/** A small repeatable source of numbers in [0, 1) (mulberry32, public domain): the same demo every time. */
function repeatable(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4_294_967_296;
  };
}

/** Small deviations around zero, evenly spread over ± `size`, the same for the same seed. */
export function deviations(seed: number): (size: number) => number {
  const next = repeatable(seed);
  return (size) => (2 * next() - 1) * size;
}

/** Rounds to a number of decimals, as an instrument shows it. */
export function shown(value: number, decimals: number): number {
  return Number(value.toFixed(decimals));
}
