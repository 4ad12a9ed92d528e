/** The median distance of two samples, min; null for fewer than two. */
export function usualIntervalMin(timeMs: Float64Array): number | null {
  if (timeMs.length < 2) return null;
  const count = timeMs.length - 1;
  const middle = Math.floor(count / 2);
  const stepAt = (index: number) => (timeMs[index + 1] ?? 0) - (timeMs[index] ?? 0);
  // Nearly every log has one step more often than all others together, and that is the median then.
  const usual = stepAt(middle);
  let [alike, below] = [0, 0];
  for (let index = 0; index < count; index++) {
    const step = stepAt(index);
    if (step === usual) alike++;
    else if (step < usual) below++;
  }
  if (below <= middle && middle < below + alike) return usual / 60_000;
  const steps = new Float64Array(count);
  for (let index = 0; index < count; index++) steps[index] = stepAt(index);
  return (steps.sort()[middle] ?? 0) / 60_000;
}
