import { describe, expect, test } from "vitest";
import { evaluateJob, type JobContext } from "@/lib/domain/evaluate";
import { afternoonPicture } from "@/lib/domain/pictures/afternoon";
import { capacityLinesPicture } from "@/lib/domain/pictures/capacity-lines";
import { coilPathPicture } from "@/lib/domain/pictures/coil-path";
import { staticPartsPicture } from "@/lib/domain/pictures/static-parts";
import { heldCoilHeatPump } from "../../seed/catalog/equipment";
import { aJobContext, DESIGNED, TWO_STAGE } from "./a-job-context";

const designed = aJobContext(DESIGNED);
/** The same house with a compressor that holds a coil temperature. */
const held: JobContext = {
  ...aJobContext({
    ...DESIGNED,
    equipment_selection: { capacitySetting: "2.5 tons" },
    airflow_setup: { secondStageAirflowSetting: "C", designExternalStaticInWc: 0.5 },
  }),
  model: { ...TWO_STAGE, ...heldCoilHeatPump, familyId: TWO_STAGE.familyId },
};
const draw = <T>(
  picture: (context: JobContext, evaluation: ReturnType<typeof evaluateJob>) => T,
  of: JobContext,
) => picture(of, evaluateJob(of));

describe("coil path", () => {
  test("begins at the room's air: 75 °F and 50 % hold 64.6 gr/lb at sea level", () => {
    // ASHRAE saturation table (recalled): 75 °F 0.43016 psia. W = 0.621945·0.21508/(14.696−0.21508) = 0.009238 lb/lb, times 7000.
    const path = draw(coilPathPicture, held);
    expect(path?.coilPath[0]?.dryBulbF).toBe(75);
    expect(path?.coilPath[0]?.grainsPerLb).toBeCloseTo(64.66, 0);
    const [room, leaving] = path?.states ?? [];
    expect(leaving?.dryBulbF).toBeLessThan(room?.dryBulbF ?? 0);
    expect(leaving?.grainsPerLb).toBeLessThan(room?.grainsPerLb ?? 0);
    expect(path?.limit?.label).toContain("55 %");
  });

  test("a maker's table says nothing of the leaving air, so no path is drawn", () => {
    const path = draw(coilPathPicture, designed);
    expect(path?.states.map(({ key }) => key)).toEqual(["entering"]);
    expect(path?.coilPath).toEqual([]);
  });

  test("nothing without the room's air", () => {
    expect(draw(coilPathPicture, aJobContext({}))).toBeNull();
  });
});

describe("capacity over airflow", () => {
  test("the loads are those entered: 24,000 sensible and 30,500 in all", () => {
    expect(draw(capacityLinesPicture, designed)?.loads.map(({ loadBtuh }) => loadBtuh)).toEqual([
      30_500, 24_000,
    ]);
  });

  test("a table of one airflow gives the table's own capacity there", () => {
    const total = draw(capacityLinesPicture, designed)?.series[0];
    expect(total?.points.find(({ airflowCfm }) => airflowCfm === 1_000)?.capacityBtuh).toBe(36_000);
  });

  test("of a held coil: capacity grows with airflow up to the setting's ceiling, and a larger setting never gives less", () => {
    const lines = draw(capacityLinesPicture, held);
    const values = (key: string) =>
      lines?.series.find((one) => one.key === key)?.points.map(({ capacityBtuh }) => capacityBtuh) ?? [];
    const chosen = values("total");
    expect(chosen.length).toBeGreaterThan(5);
    for (const [index, value] of chosen.entries()) {
      expect(value).toBeGreaterThanOrEqual((chosen[index - 1] ?? 0) - 1e-6);
      expect(values("total 3 tons")[index]).toBeGreaterThanOrEqual(value - 1e-6);
      expect(values("total 2 tons")[index]).toBeLessThanOrEqual(value + 1e-6);
    }
    // Ceiling by hand: 36,000 at 95 °F times 2.5/3.
    expect(Math.max(...chosen)).toBeLessThanOrEqual(30_000 + 1e-6);
  });
});

test("static parts: only what is entered, in the air's order, against the maker's maximum", () => {
  const picture = staticPartsPicture(
    aJobContext({ airflow_setup: { supplyDropInWc: 0.12, filterDropInWc: 0.1 } }),
  );
  expect(picture?.parts.map(({ dropInWc }) => dropInWc)).toEqual([0.1, 0.12]);
  expect(picture?.limit?.inWc).toBe(0.9);
  expect(staticPartsPicture(designed)).toBeNull();
});

describe("hot afternoon", () => {
  const settings = {
    firstStageStartOffsetF: 1,
    secondStageStartOffsetF: 1,
    minimumCompressorRunMin: 10,
    minimumCompressorRestMin: 5,
    stepBackToFirstStage: false,
    coolingPastSetpointF: 0,
  };
  const withOffset = (secondStageStartOffsetF: number) =>
    aJobContext({
      ...DESIGNED,
      load_summary: { ...DESIGNED.load_summary, floorAreaFt2: 2_000 },
      control_setup: { ...settings, secondStageStartOffsetF },
    });

  test("a second stage that starts with the first runs at once", () => {
    const runs = draw(afternoonPicture, withOffset(1))?.runs ?? [];
    expect(runs.length).toBeGreaterThan(0);
    expect(runs.every(({ stage }) => stage === "second stage")).toBe(true);
  });

  test("with its own offset the first stage comes first, and runs do not overlap", () => {
    const runs = draw(afternoonPicture, withOffset(3))?.runs ?? [];
    expect(runs[0]?.stage).toBe("first stage");
    for (const [index, run] of runs.entries()) {
      expect(run.fromMin).toBeGreaterThanOrEqual(runs[index - 1]?.toMin ?? 0);
      expect(run.toMin).toBeGreaterThan(run.fromMin);
    }
  });

  test("nothing while a setting is missing", () => {
    expect(draw(afternoonPicture, designed)).toBeNull();
  });
});
