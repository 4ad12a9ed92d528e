import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { verdictOnInterval } from "@/lib/engineering/findings";
import { decidingReading, type UncertainInput, withUncertainty } from "@/lib/engineering/startup";

type Names = "a" | "b" | "c";
const input = (value: number, accuracy: number): UncertainInput => ({
  value,
  standardUncertainty: accuracy / Math.sqrt(3),
  instrumentId: null,
});
const fn = ({ a, b, c }: Readonly<Record<Names, number>>) => (a * b) / c;

describe("which reading decides", () => {
  it("by hand: y = a, value 1.0 above the limit, other inputs exact → U = 2a/√3 ≤ 1.0, a ≤ 0.866, said as 0.8", () => {
    const result = withUncertainty(({ a }: Readonly<Record<"a", number>>) => a, { a: input(10, 2) });
    expect(decidingReading(result, { min: 9, max: null })).toEqual({
      kind: "one reading",
      input: "a",
      accuracy: expect.closeTo(0.8, 9),
      accuracyText: "0.8",
    });
  });

  it("by hand: y = a + b with u(b) = 0.3 fixed: (2u)² ≤ 1 → u(a)² ≤ 0.25 − 0.09 = 0.16, a ≤ 0.693, said as 0.6", () => {
    const sum = ({ a, b }: Readonly<Record<"a" | "b", number>>) => a + b;
    const result = withUncertainty(sum, {
      a: input(5, 2),
      b: { value: 5, standardUncertainty: 0.3, instrumentId: null },
    });
    expect(decidingReading(result, { min: 9, max: null })).toMatchObject({
      input: "a",
      accuracyText: "0.6",
    });
  });

  it("of two that could, the one that needs the least improvement", () => {
    const sum = ({ a, b }: Readonly<Record<"a" | "b", number>>) => a + b;
    const exactly = (u: number) => ({ value: 5, standardUncertainty: u, instrumentId: null });
    // a: √(0.25 − 0.16) = 0.300 of 0.45, 0.67; b: √(0.25 − 0.2025) = 0.218 of 0.40, 0.54. ±0.300·√3 = 0.519.
    const result = withUncertainty(sum, { a: exactly(0.45), b: exactly(0.4) });
    expect(decidingReading(result, { min: 9, max: null })).toMatchObject({ input: "a", accuracyText: "0.5" });
  });

  it("several when none suffices alone, largest first", () => {
    const sum = ({ a, b }: Readonly<Record<"a" | "b", number>>) => a + b;
    const result = withUncertainty(sum, { a: input(5, 2), b: input(5, 3) });
    // u = √(4/3 + 9/3) = 2.082; the target is 0.5: 4.16 times smaller.
    expect(decidingReading(result, { min: 9, max: null })).toEqual({
      kind: "several readings",
      inputs: ["b", "a"],
      times: expect.closeTo(4.163, 3),
    });
  });

  it("nothing when the value lies on the limit", () => {
    const result = withUncertainty(({ a }: Readonly<Record<"a", number>>) => a, { a: input(9, 2) });
    expect(decidingReading(result, { min: 9, max: null })).toEqual({ kind: "nothing" });
  });

  it("law: an instrument of the accuracy named does decide, whichever side the value is on", () => {
    const plausible = fc.double({ min: 5, max: 20, noNaN: true });
    const accuracy = fc.double({ min: 0.05, max: 2, noNaN: true });
    const single = fc.tuple(plausible, accuracy).map(([value, a]) => input(value, a));
    let decided = 0;
    fc.assert(
      fc.property(
        fc.record({ a: single, b: single, c: single }),
        fc.double({ min: 0.8, max: 1.2, noNaN: true }),
        (inputs, place) => {
          const result = withUncertainty(fn, inputs);
          const range = { min: result.value * place, max: null };
          if (verdictOnInterval(result.value, result.expandedUncertainty, range) !== "can't tell") return;
          const answer = decidingReading(result, range);
          if (answer.kind !== "one reading") return;
          const better = withUncertainty(fn, {
            ...inputs,
            [answer.input]: input(inputs[answer.input].value, answer.accuracy),
          });
          // The sensitivity over a smaller step differs a little in a curved function: 1 % of room.
          const verdict = verdictOnInterval(better.value, better.expandedUncertainty * 0.99, range);
          expect(verdict).toBe(place <= 1 ? "meets" : "falls short");
          decided += 1;
        },
      ),
      { seed: 10, numRuns: 2_000 },
    );
    expect(decided).toBeGreaterThan(100);
  });
});
