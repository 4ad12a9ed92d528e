/**
 * Moves label positions apart so that none overlaps, keeping their order and staying inside the limits when
 * there is room for all.
 */
export function spread(
  positions: readonly number[],
  gap: number,
  low: number,
  high: number,
): readonly number[] {
  const order = positions.map((_, index) => index).sort((i, j) => (positions[i] ?? 0) - (positions[j] ?? 0));
  const placed = [...positions];
  let floor = low;
  for (const index of order) {
    placed[index] = Math.max(positions[index] ?? 0, floor);
    floor = (placed[index] ?? 0) + gap;
  }
  let ceiling = high;
  for (const index of order.reverse()) {
    placed[index] = Math.min(placed[index] ?? 0, ceiling);
    ceiling = (placed[index] ?? 0) - gap;
  }
  return placed;
}
