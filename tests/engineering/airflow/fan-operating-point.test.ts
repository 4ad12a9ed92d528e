import fc from "fast-check";
import { describe, expect, it, test } from "vitest";
import {
  airflowFromStaticTable,
  ductCoefficient,
  type FanPoint,
  fanOperatingPoint,
  fanOperatingPoints,
  filterLoading,
} from "@/lib/engineering/airflow";
import { ImpossibleStateError, OutOfRangeError } from "@/lib/engineering/errors";

const SOURCE = "invented fan table; expected points by hand arithmetic on its straight pieces [C]";

const line = (
  setting: string,
  externalStaticInWc: number,
  airflowCfm: number,
  powerW: number | null,
): FanPoint => ({ setting, externalStaticInWc, airflowCfm, powerW });

/** Out of order on purpose. */
const TABLE: readonly FanPoint[] = [
  line("B", 0.5, 1_200, 400),
  line("B", 0.1, 1_400, 300),
  line("B", 0.8, 1_000, 460),
  line("A", 0.1, 900, null),
  line("A", 0.8, 850, null),
];

describe(SOURCE, () => {
  it("meets a duct curve drawn through a listed point at that point", () => {
    const k = ductCoefficient({ airflowCfm: 1_200, externalStaticInWc: 0.5 });
    const point = fanOperatingPoint({ table: TABLE, setting: "B", ductCoefficient: k });
    expect(point).toMatchObject({ kind: "on the table", setting: "B" });
    if (point.kind === "on the table") {
      expect(point.airflowCfm).toBeCloseTo(1_200, 9);
      expect(point.externalStaticInWc).toBeCloseTo(0.5, 12);
      expect(point.powerW).toBeCloseTo(400, 9);
    }
  });

  it("meets a curve through the middle of a piece, (0.65, 1,100), at the middle, with 430 W", () => {
    const k = 0.65 / 1_100 ** 2;
    const point = fanOperatingPoint({ table: TABLE, setting: "B", ductCoefficient: k });
    if (point.kind !== "on the table") throw new Error("expected a point on the table");
    expect(point.airflowCfm).toBeCloseTo(1_100, 9);
    expect(point.externalStaticInWc).toBeCloseTo(0.65, 12);
    expect(point.powerW).toBeCloseTo(430, 9);
  });

  it("says on which side it leaves the table instead of extending it", () => {
    const easy = fanOperatingPoint({ table: TABLE, setting: "B", ductCoefficient: 0.05 / 1_400 ** 2 });
    expect(easy).toEqual({
      kind: "off the table",
      setting: "B",
      side: "below the lowest static",
      listedStaticInWc: 0.1,
    });
    const hard = fanOperatingPoint({ table: TABLE, setting: "B", ductCoefficient: 0.9 / 1_000 ** 2 });
    expect(hard).toMatchObject({ side: "above the highest static", listedStaticInWc: 0.8 });
  });

  it("answers every setting; a table without power gives no power", () => {
    const points = fanOperatingPoints({ table: TABLE, ductCoefficient: 0.5 / 1_200 ** 2 });
    expect(points.map((point) => point.setting)).toEqual(["B", "A"]);
    expect(points[1]).toMatchObject({ kind: "on the table", powerW: null });
  });

  it("loses air when the filter loads: +0.15 in. w.c. at 1,100 on the curve of (0.5, 1,200)", () => {
    const result = filterLoading({
      table: TABLE,
      setting: "B",
      ductCoefficient: 0.5 / 1_200 ** 2,
      filter: { cleanInWc: 0.1, loadedInWc: 0.25, atAirflowCfm: 1_100 },
    });
    if (result.loaded.kind !== "on the table") throw new Error("expected a point on the table");
    // By hand: k' = 0.5/1,440,000 + 0.15/1,210,000 = 4.7118916e-7. On the piece 0.5 + 0.3 t = k' (1,200 − 200 t)²:
    // a = 0.01884757, b = 0.52617080, c = −0.17851240 → t = 0.3434934, 1,131.30 cfm.
    const { airflowCfm, externalStaticInWc } = result.loaded;
    expect(airflowCfm).toBeCloseTo(1_131.3, 1);
    expect(externalStaticInWc).toBeCloseTo(4.7118916e-7 * airflowCfm ** 2, 7);
    expect(externalStaticInWc).toBeCloseTo(0.5 + (0.3 * (1_200 - airflowCfm)) / 200, 12);
    expect(result.airflowChangePct).toBeCloseTo((airflowCfm / 1_200 - 1) * 100, 9);
    expect(result.airflowChangePct).toBeLessThan(0);
  });

  it("reads airflow from static between lines: 0.2 in. w.c. is a quarter of the way, 1,350 cfm", () => {
    const at = (externalStaticInWc: number) =>
      airflowFromStaticTable({ table: TABLE, setting: "B", externalStaticInWc });
    expect(at(0.2)).toBeCloseTo(1_350, 9);
    expect(at(0.1)).toBe(1_400);
    expect(at(0.8)).toBe(1_000);
    expect(() => at(0.81)).toThrow(OutOfRangeError);
    expect(() => at(0.09)).toThrow("external static pressure");
  });
});

describe("laws", () => {
  /** A fan whose airflow never rises with static. */
  const falling = fc
    .tuple(
      fc.array(fc.double({ min: 0.02, max: 0.4, noNaN: true }), { minLength: 2, maxLength: 6 }),
      fc.array(fc.double({ min: 0, max: 200, noNaN: true }), { minLength: 6, maxLength: 6 }),
    )
    .map(([steps, drops]) => {
      let externalStaticInWc = 0;
      let airflowCfm = 2_000;
      return steps.map((step, index) => {
        externalStaticInWc += step;
        airflowCfm -= drops[index] ?? 0;
        return { setting: "x", externalStaticInWc, airflowCfm, powerW: null };
      });
    });
  const coefficient = fc.double({ min: 1e-8, max: 3e-6, noNaN: true });

  it("the operating point lies on the duct curve and on the fan curve", () => {
    fc.assert(
      fc.property(falling, coefficient, (table, k) => {
        const point = fanOperatingPoint({ table, setting: "x", ductCoefficient: k });
        if (point.kind === "off the table") return;
        const { airflowCfm, externalStaticInWc } = point;
        expect(externalStaticInWc / (k * airflowCfm ** 2)).toBeCloseTo(1, 9);
        const last = table.at(-1)?.externalStaticInWc ?? 0;
        const read = airflowFromStaticTable({
          table,
          setting: "x",
          externalStaticInWc: Math.min(externalStaticInWc, last),
        });
        expect(read).toBeCloseTo(airflowCfm, 6);
      }),
      { seed: 6, numRuns: 500 },
    );
  });

  it("harder ducts never give more air", () => {
    fc.assert(
      fc.property(falling, coefficient, coefficient, (table, k1, k2) => {
        const [easy, hard] = [Math.min(k1, k2), Math.max(k1, k2)].map((ductCoefficient) =>
          fanOperatingPoint({ table, setting: "x", ductCoefficient }),
        );
        if (easy?.kind !== "on the table" || hard?.kind !== "on the table") return;
        expect(hard.airflowCfm).toBeLessThanOrEqual(easy.airflowCfm + 1e-9);
        expect(hard.externalStaticInWc).toBeGreaterThanOrEqual(easy.externalStaticInWc - 1e-12);
      }),
      { seed: 7, numRuns: 500 },
    );
  });

  test("an unusable table is refused with its reason", () => {
    const use = (table: readonly FanPoint[]) => () =>
      fanOperatingPoint({ table, setting: "B", ductCoefficient: 4e-7 });
    expect(use([])).toThrow(ImpossibleStateError);
    expect(use([line("B", 0.5, 1_200, null)])).toThrow("at least two");
    expect(use([line("B", 0.5, 1_200, null), line("B", 0.5, 1_100, null)])).toThrow("two airflows");
    expect(use([line("B", 0.5, 0, null), line("B", 0.6, 1_100, null)])).toThrow("fan table airflow");
  });
});
