import { expect, it } from "vitest";
import { searchEvents } from "@/lib/domain/forecast";
import { BASE, COASTAL, SYSTEM } from "../../engineering/simulation/fixtures";
import { LOAD } from "../../engineering/simulation/load-of-a-house";

const asIs = { name: "as it is", effort: 0 };
const { controls, ventilation } = BASE;
const order = {
  house: { kind: "load summary" as const, load: LOAD, changed: {} },
  weather: COASTAL,
  humidityLimitPct: 55,
  mostHoursAboveLimit: 8_784,
  mostAboveSetpointDegreeHours: 100_000,
  space: {
    capacity: [asIs],
    airflow: [asIs],
    systems: [[SYSTEM]],
    controls: [
      { ...asIs, value: controls },
      { name: "warmer", effort: 1, value: { ...controls, coolingSetpointF: 77 } },
    ],
    ventilation: [{ ...asIs, value: ventilation }],
    dehumidifier: [{ ...asIs, value: null }],
  },
  keep: 1,
};

it("searches from the least effort on, then turns each setting around what it found", () => {
  const events = [...searchEvents(order)];
  // The promise asks nothing: the first, without effort, keeps it and the search ends; then five settings are turned.
  expect(events.map(({ kind }) => kind)).toEqual(["tried", ...Array(5).fill("turned"), "done"]);
  const turned = events.at(-2);
  const [first, second] = turned?.kind === "turned" ? turned.settings : [];
  expect(first?.axis).toBe("controls");
  expect(first?.spreadHours).toBeGreaterThan(0);
  expect(second?.spreadHours).toBe(0);
});

it("fails in words", () => {
  expect([...searchEvents({ ...order, keep: 99 })]).toEqual([
    { kind: "failed", problem: expect.stringMatching(/keep/) },
  ]);
});
