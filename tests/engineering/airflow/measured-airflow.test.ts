import { describe, expect, it, test } from "vitest";
import { cfmPerTon, fanEfficacy, temperatureRiseAirflowCfm } from "@/lib/engineering/airflow";

test("temperature rise [C]: 10 kW over 30 °F → 34,120/32.4 = 1,053.1 cfm", () => {
  const airflow = temperatureRiseAirflowCfm({
    heat: { kilowatts: 10 },
    temperatureRiseF: 30,
    densityRatio: 1,
  });
  expect(airflow).toBeCloseTo(1_053.09, 1);
});

test("temperature rise [C]: 240 V · 40 A = 9.6 kW over 30 °F → 1,011.0 cfm", () => {
  const airflow = temperatureRiseAirflowCfm({
    heat: { volts: 240, amps: 40 },
    temperatureRiseF: 30,
    densityRatio: 1,
  });
  expect(airflow).toBeCloseTo(1_010.96, 1);
});

test("thin air carries less heat, so the same rise means more cfm", () => {
  const at = (densityRatio: number) =>
    temperatureRiseAirflowCfm({ heat: { kilowatts: 10 }, temperatureRiseF: 30, densityRatio });
  expect(at(0.8) / at(1)).toBeCloseTo(1.25, 12);
});

test("airflow per ton: 900 cfm on 27,000 Btu/h (2.25 tons) = 400", () => {
  expect(cfmPerTon(900, 27_000)).toBeCloseTo(400, 12);
});

describe("fan efficacy grades, ANSI/RESNET/ICC 310: 0.45 and 0.58 W/cfm [M+ recalled]", () => {
  it.each([
    [450, "grade I"],
    [451, "grade II"],
    [580, "grade II"],
    [581, "grade III"],
  ])("%d W at 1,000 cfm → %s", (fanPowerW, grade) => {
    const result = fanEfficacy({
      fanPowerW,
      airflowCfm: 1_000,
      gradeOneMax: 0.45,
      gradeTwoMax: 0.58,
    });
    expect(result.grade).toBe(grade);
    expect(result.wattsPerCfm).toBeCloseTo(fanPowerW / 1_000, 12);
  });
});

test("refuses what cannot be measured", () => {
  const rise = (temperatureRiseF: number, kilowatts: number) => () =>
    temperatureRiseAirflowCfm({ heat: { kilowatts }, temperatureRiseF, densityRatio: 1 });
  expect(rise(0, 10)).toThrow("temperature rise");
  expect(rise(30, Number.NaN)).toThrow("heater power");
  expect(() => cfmPerTon(1_000, 0)).toThrow("capacity as set");
});
