import { expect, test } from "vitest";
import { ductCurve } from "@/lib/charts/duct-curve";
import { evaluateJob } from "@/lib/domain/evaluate";
import { ductCurvePicture } from "@/lib/domain/pictures/duct-curve";
import { measuredAirflowPicture } from "@/lib/domain/pictures/measured-airflow";
import { aJobContext, TWO_STAGE } from "../domain/a-job-context";

/** Two straight fan curves, so that the meeting points can be worked out by hand. */
const FAN = [
  { airflowSetting: "low", externalStaticInWc: 0.1, airflowCfm: 800, powerW: null },
  { airflowSetting: "low", externalStaticInWc: 0.9, airflowCfm: 600, powerW: null },
  { airflowSetting: "high", externalStaticInWc: 0.1, airflowCfm: 1_200, powerW: 200 },
  { airflowSetting: "high", externalStaticInWc: 0.9, airflowCfm: 1_000, powerW: 400 },
];

function picture(change: { readonly filterDropInWc?: number; readonly fan?: typeof FAN } = {}) {
  const context = aJobContext(
    {
      airflow_setup: {
        firstStageAirflowSetting: "low",
        secondStageAirflowSetting: "high",
        designExternalStaticInWc: 0.5,
        filterDropInWc: change.filterDropInWc ?? null,
        filterLoadedDropInWc: change.filterDropInWc === undefined ? null : 2 * change.filterDropInWc,
      },
    },
    { model: { ...TWO_STAGE, fan: change.fan ?? FAN } },
  );
  return ductCurvePicture(context, evaluateJob(context));
}

test("each setting meets the ducts where k·cfm² crosses its line", () => {
  const found = picture();
  // High at 0.5 in. w.c. is half way: 1,100 cfm; k = 0.5 ÷ 1,100².
  const [low, high] = found?.meets ?? [];
  expect(high).toMatchObject({ setting: "high", chosen: true });
  expect(high?.airflowCfm).toBeCloseTo(1_100, 6);
  expect(high?.powerW).toBeCloseTo(300, 6);
  // Low: cfm = 825 − 250 Δp and Δp = 0.5 (cfm ÷ 1,100)². Quadratic 250·0.5/1,100² c² + c − 825 = 0 → c = 764.6 cfm, 0.2416 in. w.c.
  const a = (250 * 0.5) / 1_100 ** 2;
  const expected = (-1 + Math.sqrt(1 + 4 * a * 825)) / (2 * a);
  expect(low?.airflowCfm).toBeCloseTo(expected, 6);
  expect(low?.externalStaticInWc).toBeCloseTo(0.5 * (expected / 1_100) ** 2, 6);
});

test("a loaded filter moves the chosen settings left, and says how its drop is taken", () => {
  const found = picture({ filterDropInWc: 0.15 });
  const loaded = found?.meets.filter(({ ducts }) => ducts === "filter loaded") ?? [];
  expect(loaded.map(({ setting }) => setting)).toEqual(["low", "high"]);
  // High: k = (0.5 + 0.15) ÷ 1,100²; cfm = 1,225 − 250 Δp.
  const a = (250 * 0.65) / 1_100 ** 2;
  expect(loaded[1]?.airflowCfm).toBeCloseTo((-1 + Math.sqrt(1 + 4 * a * 1_225)) / (2 * a), 6);
  expect(found?.remarks.join(" ")).toMatch(/common practice, no source/);
});

test("a chosen setting that meets the ducts off the table is said in words, not drawn", () => {
  const fan = FAN.map((row) =>
    row.airflowSetting === "low" ? { ...row, airflowCfm: row.airflowCfm / 4 } : row,
  );
  const found = picture({ fan });
  expect(found?.meets.map(({ setting }) => setting)).toEqual(["high"]);
  expect(found?.remarks.join(" ")).toMatch(/Setting low meets the ducts below the lowest static/);
});

test("the geometry holds every point inside its plot, with text and table; nothing without a curve", () => {
  const found = picture({ filterDropInWc: 0.15 });
  if (!found) throw new Error("There is a picture.");
  for (const width of [340, 600, 1_080]) {
    const drawn = ductCurve({ ...found, width });
    if (!drawn) throw new Error("There is a drawing.");
    for (const mark of drawn.marks) {
      expect(mark.x).toBeGreaterThan(52);
      expect(mark.x).toBeLessThan(width - 84);
      expect(mark.y).toBeGreaterThan(34);
      expect(mark.y).toBeLessThan(drawn.height - 44);
    }
    expect(drawn.textAlternative).toMatch(/setting high moves 1,100 cfm against 0.50 in. w.c./);
    expect(drawn.tableRows).toHaveLength(4);
  }
  expect(ductCurve({ settings: [], ducts: [], meets: [], remarks: [], limit: null, width: 600 })).toBeNull();
});

test.each([300, 900])(
  "names of four near curves stand beside each other at %i px, in the curves' order",
  (width) => {
    const settings = ["tap 1", "tap 2", "tap 3", "tap 4"].map((name, index) => ({
      name,
      chosen: index === 1,
      points: [0.1, 0.9].map((externalStaticInWc) => ({
        airflowCfm: 900 + 20 * index - 100 * externalStaticInWc,
        externalStaticInWc,
      })),
    }));
    const drawn = ductCurve({ settings, ducts: [], meets: [], remarks: [], limit: null, width });
    const lefts = drawn?.labels.filter(({ key }) => key.startsWith("fan-")).map(({ x }) => x) ?? [];
    expect(lefts).toHaveLength(4);
    // A letter of 12 px text is about 6.5 px wide.
    for (const [index, left] of lefts.slice(1).entries())
      expect(left - (lefts[index] ?? 0)).toBeGreaterThanOrEqual(5 * 6.5);
    expect(lefts[0]).toBeGreaterThan(52);
    expect(lefts[3]).toBeLessThan(width - 84);
  },
);

test("a phone's static lies on the curve of its setting, beside the designed point", () => {
  const context = aJobContext(
    {
      airflow_setup: {
        firstStageAirflowSetting: "low",
        secondStageAirflowSetting: "high",
        designExternalStaticInWc: 0.5,
      },
      startup_record: {
        secondAirflowMethod: "static table",
        secondReturnStaticInWc: 0.3,
        secondSupplyStaticInWc: 0.4,
        firstAirflowMethod: "static table",
        firstReturnStaticInWc: 0.1,
        firstSupplyStaticInWc: 0.1,
      },
    },
    { model: { ...TWO_STAGE, fan: FAN } },
  );
  const evaluation = evaluateJob(context);
  const full = measuredAirflowPicture(context, evaluation, "second");
  // High falls from 1,200 at 0.1 to 1,000 at 0.9 in. w.c.: at 0.3 + 0.4 = 0.7 it moves 1,050 cfm.
  expect(full?.meets[0]).toMatchObject({ setting: "high", ducts: "measured", externalStaticInWc: 0.7 });
  expect(full?.meets[0]?.airflowCfm).toBeCloseTo(1_050, 6);
  expect(full?.settings.map(({ name }) => name)).toEqual(["high"]);
  const drawn = full && ductCurve({ ...full, width: 340 });
  expect(drawn?.textAlternative).toContain("setting high moves 1,050 cfm against 0.70 in. w.c. (measured)");
  // The first stage: low at 0.2 is 775 cfm; designed is where low meets the ducts, 764.6 cfm at 0.2416 (see above).
  const first = measuredAirflowPicture(context, evaluation, "first");
  expect(first?.meets.map((one) => Math.round(one.airflowCfm))).toEqual([775, 765]);
  expect(first?.remarks).toEqual(["Designed: 765 cfm against 0.24 in. w.c."]);
  // A designed point that is on no curve lies inside the axes all the same.
  const far = first && {
    ...first,
    meets: first.meets.map((one) => ({ ...one, airflowCfm: one.airflowCfm + 900 })),
  };
  for (const mark of (far && ductCurve({ ...far, width: 340 })?.marks) ?? expect.fail("marks"))
    expect(mark.x).toBeLessThanOrEqual(340 - 84);
  const byHood = { ...context.inputs.startup_record, secondAirflowMethod: "flow plate" as const };
  const other = { ...context, inputs: { ...context.inputs, startup_record: byHood } };
  expect(measuredAirflowPicture(other, evaluation, "second")).toBeNull();
});
