import { describe, expect, it } from "vitest";
import type { JobContext } from "@/lib/domain/evaluate";
import { jobSetup, missingHref, optionSetup } from "@/lib/domain/forecast";
import type { StageInputs } from "@/lib/domain/stages";
import { type HeldCoilSystem, simulateYear, type TableSystem } from "@/lib/engineering/simulation";
import { houseFromLoadSummary } from "@/lib/engineering/simulation/house-from-load-summary";
import { singleSpeedCooler, twoStageHeatPump } from "@/seed/catalog/equipment";
import { COASTAL } from "../../engineering/simulation/fixtures";
import { asModel, FULL_JOB } from "../../support/full-job";

type Some = { readonly [S in keyof StageInputs]?: Partial<StageInputs[S]> };

function job(some: Some, change: Partial<JobContext> = {}): JobContext {
  const inputs = Object.fromEntries(
    Object.entries(FULL_JOB.inputs).map(([stage, values]) => [
      stage,
      { ...values, ...some[stage as keyof StageInputs] },
    ]),
  ) as unknown as StageInputs;
  return { ...FULL_JOB, inputs, ...change };
}

function ready(context: JobContext, changed = {}) {
  const setup = optionSetup(context, "as designed", changed);
  if (!setup.ready) throw new Error(setup.missing.map((one) => one.text).join("; "));
  return setup.value;
}

const texts = (part: { readonly ready: boolean; readonly missing?: readonly { readonly text: string }[] }) =>
  part.ready ? [] : part.missing?.map((one) => one.text);

describe("an option's part of a forecast, from the records", () => {
  it("takes the held coil's settings from the model, the capacity setting and the board", () => {
    const { option } = ready(FULL_JOB);
    const system = option.system as HeldCoilSystem;
    // Two of three tons; 45 °F held, 5 °F colder by the board; 0.25 of the full 38,600 Btu/h at 82 °F (40,000 less 7/20 of 4,000).
    expect(system.stages).toHaveLength(2);
    expect(system.stages[0]?.capacitySettingPct).toBeCloseTo(66.667, 3);
    expect(system.stages[0]?.heldTemperatureF).toBe(40);
    expect(system.stages[0]?.minimumCapacityBtuh).toBeCloseTo(0.25 * (40_000 - (7 / 20) * 4_000), 6);
    expect(system.settlingMin).toBe(8);
    // Rated: 36,000 Btu/h at 0.75 takes 9,000/(1,061 + 0.444·80) = 8.208 lb/h: 1,000 s of it on the coil, 1.5 times off it at first.
    expect(system.coilHoldsLb).toBeCloseTo((8.208 * 1_000) / 3_600, 3);
    expect(system.firstEvaporationLbPerH).toBeCloseTo(1.5 * 8.208, 2);
    expect(system.heatPumpAt47FBtuh).toBe(24_000);
    expect(system.auxiliaryKw).toBe(5);
    expect(option.ventilation).toEqual({ kind: "continuous", airflowCfm: 64 });
    expect(option.controls).toMatchObject({ coolingSetpointF: 75, heatingSetpointF: 70, dryAbovePct: 55 });
    // Its capacity at the house's own air, not the 120 pints of the rating: 95/24/3.7 kW.
    expect(option.dehumidifier).toMatchObject({ ratedPintsPerDay: 95, ratedDbF: 75, startAbovePct: 51 });
    expect(option.dehumidifier?.powerW).toBeCloseTo((1_000 * 95) / 24 / 3.7, 6);
  });

  it("gives equipment with a table its table, its own electricity and both stages", () => {
    const context = job(
      {
        equipment_selection: { capacitySetting: "3 tons" },
        airflow_setup: { firstStageAirflowSetting: "medium low", secondStageAirflowSetting: "medium" },
      },
      { model: asModel(twoStageHeatPump) },
    );
    const { option, assumptions } = ready(context);
    const system = option.system as TableSystem;
    expect(system.stages).toHaveLength(2);
    expect(system.stages.every(({ table }) => table.totalBtuh.length === 5 * 4 * 2)).toBe(true);
    expect(system.settlingMin).toBe(0);
    // Power 2,900 W · (1 − 0.011·13) over the total at 82 °F; the model's own straight lines, at the stage's airflow.
    const cfm = system.stages[1]?.airflowCfm ?? Number.NaN;
    const total = 36_000 * (1 - 0.006 * -13) * (1 + 0.2 * (cfm / 1_200 - 1));
    expect(system.wattsPerBtuhAt82F).toBeCloseTo((2_900 * (1 - 0.011 * 13)) / total, 3);
    expect(assumptions.map((one) => one.name)).not.toContain("coolingBtuhPerWAt95F");
  });

  it("runs one stage where the thermostat has one, and where the equipment has one", () => {
    expect(ready({ ...FULL_JOB, controlStages: 1 }).option.system.stages).toHaveLength(1);
    const cooler = job(
      {
        equipment_selection: { capacitySetting: "2.5 tons", auxiliaryHeatKw: null },
        airflow_setup: { firstStageAirflowSetting: null, secondStageAirflowSetting: "tap 2" },
      },
      { model: asModel(singleSpeedCooler) },
    );
    const { system } = ready(cooler).option;
    expect(system.stages).toHaveLength(1);
    // Heated by something else: kept warm, without electricity of ours.
    expect(system.auxiliaryKw).toBe(0);
    expect(system.heatPumpAt17FBtuh).toBe(58_000);
  });

  it("takes what somebody set in place of an assumption, and says so", () => {
    const { option, assumptions } = ready(FULL_JOB, { coolingSetpointF: 77, coilWetS: 500 });
    expect(option.controls.coolingSetpointF).toBe(77);
    expect(option.system.coilHoldsLb).toBeCloseTo((8.208 * 500) / 3_600, 3);
    expect(assumptions.find((one) => one.name === "coolingSetpointF")?.why).toMatch(
      /^set here; was from the control setup/,
    );
  });

  it("names every empty field with the record that holds it", () => {
    const empty = job({
      equipment_selection: { auxiliaryHeatKw: null, dehumidifierAtHousePintsPerDay: null },
      airflow_setup: { firstStageAirflowSetting: null },
      control_setup: { stepBackToFirstStage: null, secondStageStartOffsetF: null },
      load_summary: { ventilationCfm: null },
    });
    const setup = optionSetup(empty, "x", {});
    expect(texts(setup)).toEqual([
      "Airflow setup: Airflow setting, first stage",
      "Equipment selection: Auxiliary heat installed (0 when there is none)",
      "Control setup: Step back to first stage",
      "Control setup: Second-stage start offset",
      "Load summary: Mechanical outdoor air (0 when there is none)",
      "Equipment selection: Its capacity at the indoor design air",
    ]);
    expect(setup.ready ? null : setup.missing.map((one) => missingHref("7", one))[0]).toBe(
      "/jobs/7/airflow-setup#field-firstStageAirflowSetting",
    );
    expect(texts(optionSetup({ ...FULL_JOB, model: null }, "x", {}))).toEqual([
      "Equipment selection: Equipment",
    ]);
  });

  it("says why an airflow outside the maker's table has no year", () => {
    const context = job(
      {
        equipment_selection: { capacitySetting: "3 tons" },
        airflow_setup: { firstStageAirflowSetting: "high", secondStageAirflowSetting: "high" },
      },
      { model: asModel(twoStageHeatPump) },
    );
    expect(texts(optionSetup(context, "x", {}))?.join()).toMatch(/airflowCfm .*600 to 1,?100/);
  });
});

describe("the house behind the records", () => {
  it("takes people, household water and measured leakage from the load summary", () => {
    const setup = jobSetup(FULL_JOB, {});
    if (!setup.ready || setup.value.house.kind !== "load summary") throw new Error("no house");
    expect(setup.value.humidityLimitPct).toBe(55);
    const { load, changed } = setup.value.house;
    expect(load).toMatchObject({ storeys: 1, occupants: 4, householdPintsPerDay: 9, leakageMeasured: true });
    const { assumptions } = houseFromLoadSummary({ ...load, outdoorCoolingDbF: 94 }, COASTAL, changed);
    const of = (name: string) => assumptions.find((one) => one.name === name);
    expect(of("occupants")).toMatchObject({ value: 4, why: "from the load summary" });
    expect(of("householdPintsPerDay")).toMatchObject({ value: 9, low: 4.5, high: 18 });
    // 1,000 cfm · 60/(2,000 · 8.5 ft³) = 3.529 air changes, a tenth either way.
    expect(of("airChangesAt50Pa")?.low).toBeCloseTo(3.529 * 0.9, 3);
  });

  it("widens a leakage that was only assumed, and adds damp ground to the water", () => {
    const setup = jobSetup(job({ load_summary: { leakageKnownBy: "assumed", groundPintsPerDay: 6 } }), {});
    if (!setup.ready || setup.value.house.kind !== "load summary") throw new Error("no house");
    const { load } = setup.value.house;
    const { assumptions } = houseFromLoadSummary({ ...load, outdoorCoolingDbF: 94 }, COASTAL, {});
    const leak = assumptions.find((one) => one.name === "airChangesAt50Pa");
    expect([leak?.low, leak?.high].map((one) => (one ?? 0) / 3.5294)).toEqual([
      expect.closeTo(0.5, 3),
      expect.closeTo(1.7, 3),
    ]);
    expect(load.householdPintsPerDay).toBe(15);
  });

  it("names what the load summary lacks", () => {
    const bare = job({
      load_summary: { heatingBtuh: null, houseHeightFt: null, humidityLimitPct: null },
    });
    expect(texts(jobSetup(bare, {}))).toEqual([
      "Load summary: Heating load",
      "Load summary: Height of the house",
      "Load summary: Humidity limit promised",
    ]);
    expect(
      texts(
        jobSetup(job({ load_summary: { householdPintsPerDay: null, groundPintsPerDay: 3 } }), {}),
      )?.join(),
    ).toMatch(/damp ground is given/);
  });

  it("gives what a day can be run with", () => {
    const house = jobSetup(job({ load_summary: { outdoorCoolingDbF: 94, heatingBtuh: 22_000 } }), {});
    if (!house.ready || house.value.house.kind !== "load summary") throw new Error("no house");
    const { option } = ready(FULL_JOB);
    const cut = (values: Float64Array) => values.slice(4_000, 4_048);
    const weather = {
      ...COASTAL,
      hourCount: 48,
      month: COASTAL.month.slice(4_000, 4_048),
      day: COASTAL.day.slice(4_000, 4_048),
      hour: COASTAL.hour.slice(4_000, 4_048),
      dryBulbF: cut(COASTAL.dryBulbF),
      dewPointF: cut(COASTAL.dewPointF),
      humidityRatio: cut(COASTAL.humidityRatio),
      relativeHumidityPct: cut(COASTAL.relativeHumidityPct),
      pressurePsia: cut(COASTAL.pressurePsia),
      windMph: cut(COASTAL.windMph),
      windDirectionDeg: cut(COASTAL.windDirectionDeg),
      skyInfraredBtuhPerFt2: cut(COASTAL.skyInfraredBtuhPerFt2),
      globalHorizontalBtuhPerFt2: cut(COASTAL.globalHorizontalBtuhPerFt2),
      directNormalBtuhPerFt2: cut(COASTAL.directNormalBtuhPerFt2),
      diffuseHorizontalBtuhPerFt2: cut(COASTAL.diffuseHorizontalBtuhPerFt2),
    };
    const year = simulateYear({
      house: houseFromLoadSummary(house.value.house.load, COASTAL, {}).house,
      ...option,
      weather,
      humidityLimitPct: 55,
    });
    expect(year.dryHours + year.hoursAboveLimit).toBeCloseTo(48, 6);
    expect(year.firstStageHours + year.secondStageHours).toBeGreaterThan(0);
  });
});
