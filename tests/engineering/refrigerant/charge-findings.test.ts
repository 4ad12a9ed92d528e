import { describe, expect, test } from "vitest";
import { seedLimits } from "@/lib/engineering/limit-definition";
import { type ChargeReadings, chargeFindings, refrigerantLimits } from "@/lib/engineering/refrigerant";

const SOURCE = "superheat ±5 °F, subcooling ±3 °F of the maker's target [M+]; stabilise 15 min [F]";
const limits = seedLimits(refrigerantLimits);

/** R-410A at sea level: dew 40 °F is 118.3575 psig, bubble 100 °F is 318.5341 psig (table rows less 14.696). */
const readings: ChargeReadings = {
  refrigerant: "R-410A",
  meteringDevice: "fixed orifice",
  sitePressurePsia: 14.696,
  suctionPressurePsig: 118.3575,
  suctionLineF: 50,
  liquidPressurePsig: 318.5341,
  liquidLineF: 90,
  indoorWetBulbF: 64,
  outdoorDryBulbF: 96,
  makerSuperheatF: null,
  makerSubcoolingF: 10,
  steadyMinutes: 15,
  superheatUncertaintyF: 1,
  subcoolingUncertaintyF: 1,
};
function verdicts(change: Partial<ChargeReadings>) {
  return chargeFindings({ ...readings, ...change }, limits).map((said) => said.verdict);
}

describe(`charge: ${SOURCE}`, () => {
  test("the seeds", () => {
    expect(limits["refrigerant.superheatTolerance"]).toBe(5);
    expect(limits["refrigerant.subcoolingTolerance"]).toBe(3);
    expect(limits["refrigerant.stabilizeMinutes"]).toBe(15);
  });

  test("superheat 10 for target 8 and subcooling 10 for target 10 meet", () => {
    expect(verdicts({})).toEqual(["meets", "meets", "meets"]);
  });

  test.each([
    // Target 8 ± 5 with about ± 1: wholly inside to 12, open around 13, wholly outside from 14.1.
    ["suctionLineF", 51.8, "meets"],
    ["suctionLineF", 53.5, "can't tell"],
    ["suctionLineF", 54.5, "falls short"],
  ] as const)("superheat, %s %d °F: %s", (field, value, expected) => {
    expect(verdicts({ [field]: value })[1]).toBe(expected);
  });

  test.each([
    // Target 10 ± 3: 12 less 1 inside, 13.5 open, 14.5 outside.
    [88.2, "meets"],
    [86.5, "can't tell"],
    [85.5, "falls short"],
    [94.5, "falls short"],
  ] as const)("subcooling, liquid line %d °F: %s", (liquidLineF, expected) => {
    expect(verdicts({ liquidLineF })[2]).toBe(expected);
  });

  test.each([
    // Too little refrigerant shows as high superheat and low subcooling; too much the other way round.
    ["high superheat", { suctionLineF: 54.5 }, 1, /low charge/],
    ["low superheat", { suctionLineF: 41.5 }, 1, /overcharge/],
    ["low subcooling", { liquidLineF: 94.5 }, 2, /low charge/],
    ["high subcooling", { liquidLineF: 85.5 }, 2, /overcharge/],
  ] as const)("%s: where to look", (_name, change, index, advice) => {
    const said = chargeFindings({ ...readings, ...change }, limits)[index];
    expect(said?.verdict).toBe("falls short");
    expect(said?.nextStep).toMatch(advice);
  });

  test("the accuracy it asks for would decide", () => {
    // R-454B: superheat about 1.7 °F inside the tolerance, of which its model alone leaves about ±1.2 °F.
    const open = {
      ...readings,
      refrigerant: "R-454B",
      suctionPressurePsig: 118,
      superheatUncertaintyF: 3,
    } as const;
    const measured = chargeFindings(open, limits)[1]?.figures[0]?.value ?? Number.NaN;
    const at = { ...open, makerSuperheatF: measured - 3.3 };
    const said = chargeFindings(at, limits)[1];
    expect(said?.verdict).toBe("can't tell");
    const asked = Number(/±([\d.]+) °F/.exec(said?.nextStep ?? "")?.[1]);
    expect(asked).toBeGreaterThan(0.5);
    expect(chargeFindings({ ...at, superheatUncertaintyF: asked }, limits)[1]?.verdict).toBe("meets");
    expect(chargeFindings({ ...at, superheatUncertaintyF: asked + 0.2 }, limits)[1]?.verdict).toBe(
      "can't tell",
    );
    // Closer to the limit than the model itself: no gauge helps.
    const close = chargeFindings({ ...open, makerSuperheatF: measured - 4.5 }, limits)[1];
    expect(close?.nextStep).toMatch(/weigh the charge/);
  });

  test("too short a run leaves the charge open, and an unknown one too", () => {
    expect(verdicts({ steadyMinutes: 14 })).toEqual(["falls short", "can't tell", "can't tell"]);
    expect(verdicts({ steadyMinutes: null })).toEqual(["not measured", "can't tell", "can't tell"]);
  });

  test("the maker's superheat wins over the formula", () => {
    expect(verdicts({ makerSuperheatF: 20 })[1]).toBe("falls short");
  });

  test("an expansion valve: superheat is for information, subcooling needs the maker's target", () => {
    expect(verdicts({ meteringDevice: "expansion valve" })).toEqual(["meets", null, "meets"]);
    expect(verdicts({ meteringDevice: "expansion valve", makerSubcoolingF: null })[2]).toBe("not measured");
    expect(verdicts({ makerSubcoolingF: null })[2]).toBeNull();
  });

  test("conditions the formula does not cover: can't tell, with the reason", () => {
    const [, superheat] = chargeFindings({ ...readings, outdoorDryBulbF: 50 }, limits);
    expect(superheat?.verdict).toBe("can't tell");
    expect(superheat?.statement).toMatch(/outdoorDryBulbF 50 °F/);
  });

  test("superheat below zero is a wrong reading, not a verdict on the charge", () => {
    const [, superheat] = chargeFindings({ ...readings, suctionLineF: 35 }, limits);
    expect(superheat?.verdict).toBe("can't tell");
    expect(superheat?.statement).toMatch(/below zero/);
  });

  test("missing readings are named; an unknown instrument accuracy is said", () => {
    const [, superheat, subcooling] = chargeFindings(
      { ...readings, suctionLineF: null, sitePressurePsia: null, subcoolingUncertaintyF: null },
      limits,
    );
    expect(superheat?.inputs).toEqual(["suctionLineF", "sitePressurePsia"]);
    expect(subcooling?.verdict).toBe("not measured");
    const [, open] = chargeFindings({ ...readings, superheatUncertaintyF: null }, limits);
    expect(open?.statement).toMatch(/accuracy is not entered/);
  });

  test("R-454B carries its model's ±2 % [F]: about ±1.2 °F at 40 °F", () => {
    const [, superheat] = chargeFindings(
      { ...readings, refrigerant: "R-454B", superheatUncertaintyF: 0, suctionPressurePsig: 118 },
      limits,
    );
    expect(superheat?.figures[0]?.uncertainty).toBeGreaterThan(1);
    expect(superheat?.figures[0]?.uncertainty).toBeLessThan(1.5);
  });

  test("a wild reading is refused by name", () => {
    expect(() => verdicts({ suctionPressurePsig: 5_000 })).toThrow(/suctionPressurePsig/);
    expect(() => verdicts({ steadyMinutes: Number.NaN })).toThrow(/steadyMinutes/);
    expect(() => verdicts({ makerSubcoolingF: -3 })).toThrow(/makerSubcoolingF/);
    expect(() => verdicts({ superheatUncertaintyF: -1 })).toThrow(/superheatUncertaintyF/);
  });
});
