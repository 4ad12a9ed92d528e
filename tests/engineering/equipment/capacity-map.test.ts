import { describe, expect, it } from "vitest";
import {
  type AirflowSetting,
  type CapacitySetting,
  capacityMap,
  coilTemperatureHeld,
  equipmentLimits,
} from "@/lib/engineering/equipment";
import { seedLimits } from "@/lib/engineering/limit-definition";
import { indoorAir, SYSTEM } from "./fixtures";

const SOURCE = "each cell is coilTemperatureHeld; labels by Manual S-2014 limits (recalled)";
const entering = indoorAir(75, 50);
const coil = { a0LbPerH: SYSTEM.a0LbPerH, approach: SYSTEM.approach, frostLimitF: 32 };
const AIRFLOWS: readonly AirflowSetting[] = [
  { label: "lowest", airflowCfm: 550 },
  { label: "middle", airflowCfm: 800 },
  { label: "highest", airflowCfm: 1_200 },
];
const CAPACITIES: readonly CapacitySetting[] = [
  { label: "two tons", heldTemperatureF: 42, capacityCeilingBtuh: 24_000, minimumCapacityBtuh: 9_000 },
  { label: "three tons", heldTemperatureF: 42, capacityCeilingBtuh: 36_000, minimumCapacityBtuh: 9_000 },
];

function map(sensibleLoadBtuh: number, latentLoadBtuh: number, capacitySettings = CAPACITIES) {
  return capacityMap({
    entering,
    coil,
    airflowSettings: AIRFLOWS,
    capacitySettings,
    sensibleLoadBtuh,
    latentLoadBtuh,
    kind: "variable speed",
    limits: seedLimits(equipmentLimits),
  });
}

describe(`capacityMap, ${SOURCE}`, () => {
  it("has a cell for every pair in the order given, each the steady state at its settings", () => {
    const cells = map(17_000, 4_000);
    expect(cells.map((cell) => [cell.airflow.label, cell.capacity.label])).toEqual([
      ["lowest", "two tons"],
      ["lowest", "three tons"],
      ["middle", "two tons"],
      ["middle", "three tons"],
      ["highest", "two tons"],
      ["highest", "three tons"],
    ]);
    const cell = cells[3];
    expect(cell?.state).toEqual(
      coilTemperatureHeld({
        entering,
        airflowCfm: 800,
        system: { ...SYSTEM, heldTemperatureF: 42, capacityCeilingBtuh: 36_000 },
      }),
    );
  });

  it("labels by the load: fits, too big, too small", () => {
    const middle = (cells: ReturnType<typeof map>) =>
      cells.find((cell) => cell.airflow.label === "middle" && cell.capacity.label === "two tons");
    // The two-ton setting gives 24,000 Btu/h at 800 cfm.
    expect(middle(map(17_000, 4_000))).toMatchObject({ fit: "fits" }); // 24,000 / 21,000 = 1.14
    expect(middle(map(14_000, 4_000))?.fit).toBe("too big"); // 24,000 / 18,000 = 1.33
    expect(middle(map(14_000, 4_000))?.reason).toMatch(/1\.33 of the load; at most 1\.30 for variable speed/);
    expect(middle(map(24_000, 4_000))?.fit).toBe("too small"); // 24,000 / 28,000 = 0.86
    expect(middle(map(24_000, 4_000))?.reason).toMatch(/^Total capacity is 0\.86/);
    // Total fits, but too little water is taken: 24,000 Btu/h at this airflow holds far less than 7,500 latent.
    expect(middle(map(15_000, 7_500))?.reason).toMatch(/^Latent/);
  });

  it("calls the coil too cold when the frost limit decides", () => {
    const cells = map(17_000, 4_000, [
      { label: "too much", heldTemperatureF: 42, capacityCeilingBtuh: 60_000, minimumCapacityBtuh: 50_000 },
    ]);
    expect(cells[0]?.fit).toBe("coil too cold");
    expect(cells[0]?.reason).toMatch(/frost limit of 32\.0 °F/);
  });

  it("answers the question of airflow: at one capacity setting the lowest airflow dries most", () => {
    const twoTons = map(17_000, 4_000).filter((cell) => cell.capacity.label === "two tons");
    const ratios = twoTons.map((cell) => cell.state.sensibleRatio ?? 1);
    expect([...ratios].sort((a, b) => a - b)).toEqual(ratios);
  });
});
