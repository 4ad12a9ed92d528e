/** Runs work that comes in steps to its end. */
export function atOnce<T>(steps: Generator<number, T>): T {
  for (;;) {
    const { done, value } = steps.next();
    if (done) return value;
  }
}
