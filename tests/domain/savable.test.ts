import { describe, expect, test } from "vitest";
import { designOffers } from "@/lib/domain/design-offers";
import { savable, touchedFields } from "@/lib/domain/savable";
import { loadSummaryFields } from "@/lib/domain/stages/load-summary";

const SAVED = { sensibleCoolingBtuh: 24_000, outdoorCoolingDbF: 95, outdoorCoolingWbF: 77, bedrooms: 3 };
const of = (typed: object, current?: object) =>
  savable("load_summary", loadSummaryFields, SAVED, { ...SAVED, ...typed }, { ...(current ?? SAVED) });

describe("what of a form can be saved now", () => {
  test("what can be read is kept; what cannot stays as saved and is named", () => {
    const { inputs, problems } = of({ sensibleCoolingBtuh: "25,500 Btu/h", bedrooms: "three" });
    expect(inputs).toMatchObject({ sensibleCoolingBtuh: 25_500, bedrooms: 3 });
    expect(problems.map((one) => one.field)).toEqual(["bedrooms"]);
  });

  test("a value against physics waits until the other one comes", () => {
    expect(of({ outdoorCoolingWbF: "99" })).toMatchObject({
      inputs: SAVED,
      problems: [{ field: "outdoorCoolingWbF" }],
    });
    expect(of({ outdoorCoolingWbF: "79", outdoorCoolingDbF: "99" }).problems).toEqual([]);
  });

  test("the same number typed another way is no change", () => {
    expect(
      touchedFields(loadSummaryFields, SAVED, { ...SAVED, sensibleCoolingBtuh: "24,000 Btu/h" }),
    ).toEqual([]);
    expect(touchedFields(loadSummaryFields, SAVED, { ...SAVED, sensibleCoolingBtuh: "24" })).toEqual([
      "sensibleCoolingBtuh",
    ]);
  });

  test("somebody else's other field is taken in; the same field is asked about", () => {
    const apart = of({ bedrooms: "4" }, { ...SAVED, sensibleCoolingBtuh: 26_000 });
    expect([apart.inputs, apart.conflicts]).toEqual([
      { ...SAVED, bedrooms: 4, sensibleCoolingBtuh: 26_000 },
      [],
    ]);
    const same = of({ bedrooms: "4" }, { ...SAVED, bedrooms: 5 });
    expect(same.conflicts).toEqual([{ field: "bedrooms", theirs: 5, mine: 4 }]);
    expect(same.inputs).toMatchObject({ bedrooms: 5 });
  });
});

test("design values are offered with their names, rounded as the fields show them", () => {
  const offers = designOffers({
    name: "A year",
    coolingDbF: 94.46,
    coolingWbF: 77.02,
    wetDewPointF: 76.98,
    wetDbF: 83.31,
    heatingDbF: 30.25,
  });
  expect(offers.map((one) => [one.field, one.value])).toEqual([
    ["outdoorCoolingDbF", 94.5],
    ["outdoorCoolingWbF", 77],
    ["outdoorHeatingDbF", 30.3],
    ["wetMildDewPointF", 77],
    ["wetMildDbF", 83.3],
  ]);
  for (const { field } of offers) expect(loadSummaryFields).toHaveProperty(field);
});
