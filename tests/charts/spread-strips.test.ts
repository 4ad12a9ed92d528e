import { expect, test } from "vitest";
import { type SpreadStripsInput, spreadStrips } from "@/lib/charts/spread-strips";

const strip = (name: string, values: readonly number[] | null, jobs = values?.length ?? 100) => ({
  name,
  jobs,
  quantiles: [10, 20, 30, 40, 50],
  bins: [0, 4, 8, 2, 0],
  values,
});
const input = (strips: SpreadStripsInput["strips"]): SpreadStripsInput => ({
  width: 600,
  measure: "Hours above the limit",
  unit: "%",
  decimals: 1,
  least: 0,
  most: 60,
  strips,
});

test("nothing to draw is no picture", () => {
  expect(spreadStrips(input([]))).toBeNull();
});

test("few jobs are drawn one by one and without quartiles; many as bars with them", () => {
  const geometry = spreadStrips(input([strip("tap 4", [5, 30, 55]), strip("tap 2", null)]));
  expect(geometry?.marks.filter((mark) => mark.shape === "ring")).toHaveLength(3);
  expect(geometry?.marks.filter((mark) => mark.shape === "lozenge")).toHaveLength(1);
  expect(geometry?.paths.filter((path) => path.kind === "wash")).toHaveLength(1);
});

test("places are on the axis: the middle value stands in the middle", () => {
  const marks = spreadStrips(input([strip("tap 4", [0, 30, 60])]))?.marks ?? [];
  const [low, middle, high] = marks.map((mark) => mark.x);
  expect(((low ?? 0) + (high ?? 0)) / 2).toBeCloseTo(middle ?? Number.NaN, 6);
  expect(Math.min(...marks.map((mark) => mark.x))).toBeGreaterThanOrEqual(0);
  expect(Math.max(...marks.map((mark) => mark.x))).toBeLessThanOrEqual(600);
});

test("jobs that all have one value are drawn in the middle, without a bar of no width", () => {
  const one = { ...input([strip("tap 4", [5, 5])]), least: 5, most: 5 };
  const geometry = spreadStrips(one);
  expect(geometry?.paths.some((path) => path.d.includes("NaN"))).toBe(false);
  expect(geometry?.marks[0]?.x).toBeCloseTo(300, 0);
});

test("the words and the table give jobs, median and the middle 80 %", () => {
  const geometry = spreadStrips(input([strip("tap 2", null)]));
  expect(geometry?.textAlternative).toContain(
    "tap 2: 100 jobs, median 30.0 %, middle 80 % from 10.0 % to 50.0 %.",
  );
  expect(geometry?.tableRows).toEqual([["tap 2", "100", "10.0 %", "20.0 %", "30.0 %", "40.0 %", "50.0 %"]]);
});

test("of a few jobs the words give the ends, not quartiles; one job is one job", () => {
  const words = spreadStrips(input([strip("tap 4", [5, 30, 55]), strip("C", [8])]))?.textAlternative;
  expect(words).toContain("tap 4: 3 jobs, 5.0 % to 55.0 %. C: 1 job, 8.0 %.");
});
