import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { capacityOf } from "@/lib/domain/evaluate/capacity";
import { asId } from "@/lib/domain/ids";
import { moistAir, standardPressurePsia } from "@/lib/engineering/air";
import { parseEpw } from "@/lib/engineering/weather";
import { heldCoilHeatPump, singleSpeedCooler, twoStageHeatPump } from "@/seed/catalog/equipment";
import { GENERATED_LOG_HEADINGS, generatedLog } from "@/seed/house-log";
import { DRY_HOUSE, HUMID_HOUSE } from "@/seed/logged-houses";

const all = [heldCoilHeatPump, twoStageHeatPump, singleSpeedCooler];

describe("the invented equipment", () => {
  test("says of itself that it is invented", () => {
    for (const { demoData, sourceNote, modelNumber } of all) {
      expect([demoData, sourceNote, modelNumber]).toEqual([
        true,
        expect.stringContaining("invented"),
        expect.stringContaining("DEMO"),
      ]);
    }
  });

  test("never takes more sensible heat than heat, and takes more with more airflow", () => {
    for (const row of all.flatMap((model) => model.performance)) {
      if (row.sensibleBtuh !== null) expect(row.sensibleBtuh).toBeLessThanOrEqual(row.totalBtuh);
    }
    const cooling = [twoStageHeatPump, singleSpeedCooler]
      .flatMap((model) => model.performance)
      .filter((row) => row.mode === "cooling");
    const key = ({
      capacitySetting,
      outdoorDbF,
      enteringWbF,
      enteringDbF,
      powerW,
    }: (typeof cooling)[number]) => [capacitySetting, outdoorDbF, enteringWbF, enteringDbF, powerW].join();
    for (const [index, row] of cooling.entries()) {
      const next = cooling[index + 1];
      if (next && key(next) === key(row))
        expect(next.sensibleBtuh ?? 0).toBeGreaterThan(row.sensibleBtuh ?? 0);
    }
  });

  test("held coil at two tons and lowest airflow takes about 7.5 lb/h at 75 °F and 55 %: common practice, no source", () => {
    const model = { ...heldCoilHeatPump, id: asId<"equipment model">("x"), familyId: "x", version: 1 };
    const { wetBulbF } = moistAir({
      dryBulbF: 75,
      relativeHumidityPct: 55,
      pressurePsia: standardPressurePsia(0),
    });
    const found = capacityOf(
      { model, capacitySetting: "2 tons", stage: "second", colderCoil: true },
      { indoorDbF: 75, indoorWbF: wetBulbF, outdoorDbF: 95, airflowCfm: 550, elevationFt: 0 },
    );
    expect(Math.abs((found.known ? found.value.moistureLbPerH : 0) - 7.5)).toBeLessThan(0.25);
  });
});

describe("the generated log", () => {
  const weather = parseEpw(readFileSync("seed/weather/houston-2a.epw", "utf8"));

  test("is two weeks of five-minute rows, the same bytes each time", () => {
    const [first, second] = [generatedLog(DRY_HOUSE, weather), generatedLog(DRY_HOUSE, weather)];
    expect(second).toBe(first);
    const rows = first.trimEnd().split("\n");
    expect(rows).toHaveLength(1 + 14 * 24 * 12);
    expect(new Set(rows.map((row) => row.split(",").length))).toEqual(
      new Set([GENERATED_LOG_HEADINGS.length]),
    );
  });

  test("of the humid house is wetter than of the dry one", () => {
    const meanRh = (csv: string) => {
      const values = csv
        .trimEnd()
        .split("\n")
        .slice(1)
        .map((row) => Number(row.split(",")[2]));
      return values.reduce((sum, value) => sum + value, 0) / values.length;
    };
    expect(
      meanRh(generatedLog(HUMID_HOUSE, weather)) - meanRh(generatedLog(DRY_HOUSE, weather)),
    ).toBeGreaterThan(5);
  });
});
