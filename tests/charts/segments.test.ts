import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { drawSegments, segments, thinToPixels } from "@/lib/charts/segments";

const same = (point: readonly [number, number]) => point;

describe("gaps stay gaps", () => {
  test("a missing value cuts the line", () => {
    const points = [
      [0, 1],
      [1, 2],
      [2, null],
      [3, 4],
      [4, 5],
    ] as const;
    expect(segments(points, 10)).toEqual([
      [
        [0, 1],
        [1, 2],
      ],
      [
        [3, 4],
        [4, 5],
      ],
    ]);
  });

  test("too long between two readings cuts the line, exactly the allowed time does not", () => {
    expect(
      segments(
        [
          [0, 1],
          [5, 1],
          [10.1, 1],
        ],
        5,
      ),
    ).toHaveLength(2);
  });

  test("each stretch is its own path, and a reading that stands alone is a mark", () => {
    const stretches = segments(
      [
        [0, 1],
        [1, 2],
        [2, null],
        [3, 4],
      ],
      10,
    );
    const { paths, marks } = drawSegments(stretches, same, { key: "rh", tone: "a" });
    expect(paths.map((path) => path.d)).toEqual(["M0,1L1,2"]);
    expect(marks.map(({ x, y }) => [x, y])).toEqual([[3, 4]]);
  });

  test("no reading is lost and none invented, whatever is missing", () => {
    fc.assert(
      fc.property(fc.array(fc.option(fc.integer({ min: 0, max: 100 }), { nil: null })), (values) => {
        const points = values.map((value, index) => [index, value] as const);
        const drawn = segments(points, 1.5).flat();
        expect(drawn).toEqual(points.filter(([, value]) => value !== null));
      }),
      { seed: 20261125 },
    );
  });
});

describe("thinning", () => {
  test("keeps first, lowest, highest and last of a pixel column", () => {
    const column = [5, 9, 7, 1, 6, 4].map((y, index) => [index / 10, y] as const);
    expect(thinToPixels(column, (x) => x).map(([, y]) => y)).toEqual([5, 9, 1, 4]);
  });

  test("keeps the extremes of the whole stretch", () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: -50, max: 50 }), { minLength: 1, maxLength: 400 }), (values) => {
        const points = values.map((y, index) => [index, y] as const);
        const kept = thinToPixels(points, (x) => x / 20).map(([, y]) => y);
        expect(Math.max(...kept)).toBe(Math.max(...values));
        expect(Math.min(...kept)).toBe(Math.min(...values));
      }),
      { seed: 20261125 },
    );
  });
});
