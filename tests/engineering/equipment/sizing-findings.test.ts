import { describe, expect, it } from "vitest";
import {
  coolingRatios,
  equipmentLimits,
  type SizingInput,
  sizingFindings,
} from "@/lib/engineering/equipment";
import { OutOfRangeError } from "@/lib/engineering/errors";
import { seedLimits } from "@/lib/engineering/limit-definition";

const SOURCE = "ANSI/ACCA 3 Manual S-2014 (recalled; arithmetic computed)";
const limits = seedLimits(equipmentLimits);

const MATCH = {
  sensibleLoadBtuh: 24_000,
  latentLoadBtuh: 4_000,
  totalCapacityBtuh: 29_800,
  sensibleCapacityBtuh: 22_600,
};
const INPUT: SizingInput = {
  ...MATCH,
  kind: "two-stage",
  heatPump: false,
  edition: { name: "Manual S-2014" },
  leastCapacityBtuh: null,
  heatingDegreeDays65: null,
  coolingDegreeDays50: null,
};
const byRule = (input: SizingInput, id: string) =>
  sizingFindings(input, limits).find((one) => one.ruleId === `equipment.${id}`);

describe(`sizing against ${SOURCE}`, () => {
  it("adds half the excess latent to sensible: 24,200/5,600, ratios 1.064/1.008/1.40", () => {
    const found = coolingRatios(MATCH);
    // Latent 29,800 − 22,600 = 7,200; excess 3,200; half 1,600.
    expect(found.adjustedSensibleBtuh).toBe(24_200);
    expect(found.adjustedLatentBtuh).toBe(5_600);
    expect(found.totalRatio).toBeCloseTo(1.064, 3);
    expect(found.sensibleRatio).toBeCloseTo(1.008, 3);
    expect(found.latentRatio).toBeCloseTo(1.4, 12);
  });

  it("moves nothing when latent capacity is short", () => {
    const found = coolingRatios({ ...MATCH, sensibleCapacityBtuh: 27_000 });
    expect(found.adjustedSensibleBtuh).toBe(27_000);
    expect(found.latentRatio).toBeCloseTo(0.7, 12);
  });

  // Total load 28,000: capacity = ratio · 28,000.
  it.each([
    ["single speed", 0.9, "meets"],
    ["single speed", 0.89, "falls short"],
    ["single speed", 1.15, "meets"],
    ["single speed", 1.16, "falls short"],
    ["two-stage", 1.2, "meets"],
    ["two-stage", 1.21, "falls short"],
    ["variable speed", 1.3, "meets"],
    ["variable speed", 1.31, "falls short"],
  ] as const)("%s at %f of the load %s", (kind, ratio, verdict) => {
    const totalCapacityBtuh = ratio * 28_000;
    const input = { ...INPUT, kind, totalCapacityBtuh, sensibleCapacityBtuh: 0.8 * totalCapacityBtuh };
    const found = byRule(input, "total-capacity");
    expect(found?.verdict).toBe(verdict);
    expect(found?.binding).toBe(true);
    expect(found?.basis.certainty).toBe("recalled");
  });

  it("says it with numbers and units", () => {
    expect(byRule(INPUT, "total-capacity")?.statement).toBe(
      "Total capacity 29,800 Btu/h is 1.06 of the load; 0.90 to 1.20 is the range for two-stage equipment.",
    );
  });

  it("asks for the sensible minimum of 0.90", () => {
    // Latent load 4,000 and capacity exactly 4,000: no excess. 21,600 / 24,000 = 0.90.
    const at = (sensible: number) =>
      byRule(
        { ...INPUT, totalCapacityBtuh: sensible + 4_000, sensibleCapacityBtuh: sensible },
        "sensible-capacity",
      );
    expect(at(21_600)?.verdict).toBe("meets");
    expect(at(21_500)?.verdict).toBe("falls short");
  });

  it("never lets the unverified latent warning band bind", () => {
    const at = (latent: number) =>
      sizingFindings(
        { ...INPUT, totalCapacityBtuh: 25_000, sensibleCapacityBtuh: 25_000 - latent },
        limits,
      ).find((one) => one.ruleId.startsWith("equipment.latent"));
    expect(at(4_000)).toMatchObject({ ruleId: "equipment.latent-capacity", verdict: "meets", binding: true });
    expect(at(3_800)).toMatchObject({
      ruleId: "equipment.latent-warning",
      verdict: "falls short",
      binding: false,
      basis: { certainty: "unverified" },
    });
    expect(at(3_600)).toMatchObject({ ruleId: "equipment.latent-warning", binding: false });
    expect(at(3_500)).toMatchObject({
      ruleId: "equipment.latent-capacity",
      verdict: "falls short",
      binding: true,
    });
  });

  it("allows a cold-climate heat pump with little latent load 15,000 Btu/h more", () => {
    const cold: SizingInput = {
      ...INPUT,
      kind: "single speed",
      heatPump: true,
      sensibleLoadBtuh: 19_000,
      latentLoadBtuh: 1_000, // sensible ratio exactly 0.95
      totalCapacityBtuh: 35_000,
      sensibleCapacityBtuh: 30_000,
      heatingDegreeDays65: 6_000,
      coolingDegreeDays50: 3_000, // ratio exactly 2
    };
    expect(byRule(cold, "total-capacity")?.verdict).toBe("meets");
    expect(byRule({ ...cold, totalCapacityBtuh: 35_001 }, "total-capacity")?.verdict).toBe("falls short");
    expect(byRule({ ...cold, heatPump: false }, "total-capacity")?.verdict).toBe("falls short");
    expect(byRule({ ...cold, heatingDegreeDays65: 5_999 }, "total-capacity")?.verdict).toBe("falls short");
    expect(byRule({ ...cold, latentLoadBtuh: 1_100 }, "total-capacity")?.verdict).toBe("falls short");
    expect(byRule({ ...cold, heatingDegreeDays65: null }, "total-capacity")?.verdict).toBe("can't tell");
  });

  it("encodes no numbers of later editions: the company enters them", () => {
    const later: SizingInput = {
      ...INPUT,
      kind: "variable speed",
      heatPump: true,
      edition: { name: "later edition", totalMaxRatio: null, leastCapacityMaxRatio: null },
    };
    expect(byRule(later, "total-capacity")).toMatchObject({
      verdict: "not measured",
      inputs: ["edition.totalMaxRatio"],
    });
    expect(byRule(later, "turn-down")).toMatchObject({
      verdict: "not measured",
      inputs: ["edition.leastCapacityMaxRatio", "leastCapacityBtuh"],
    });
    const entered: SizingInput = {
      ...later,
      totalCapacityBtuh: 50_000,
      leastCapacityBtuh: 14_000,
      edition: { name: "later edition", totalMaxRatio: 2, leastCapacityMaxRatio: 0.5 },
    };
    expect(byRule(entered, "total-capacity")?.verdict).toBe("meets");
    expect(byRule(entered, "turn-down")?.verdict).toBe("meets"); // 14,000 / 28,000 = 0.5
    expect(byRule({ ...entered, leastCapacityBtuh: 14_001 }, "turn-down")?.verdict).toBe("falls short");
    // Other kinds of equipment keep the limits of 2014.
    expect(byRule({ ...entered, kind: "two-stage" }, "total-capacity")?.verdict).toBe("falls short");
    expect(byRule({ ...entered, kind: "two-stage" }, "turn-down")).toBeUndefined();
  });

  it("says what is missing instead of taking zero for it", () => {
    const found = sizingFindings({ ...INPUT, latentLoadBtuh: null, sensibleCapacityBtuh: null }, limits);
    expect(found.map((one) => one.verdict)).toEqual(["not measured", "not measured", "not measured"]);
    expect(found[0]?.inputs).toEqual(["latentLoadBtuh", "sensibleCapacityBtuh"]);
  });

  it("gives no verdict on a latent load of zero", () => {
    expect(byRule({ ...INPUT, latentLoadBtuh: 0 }, "latent-capacity")?.verdict).toBeNull();
  });

  it("refuses sensible above total", () => {
    expect(() => coolingRatios({ ...MATCH, sensibleCapacityBtuh: 30_000 })).toThrow(OutOfRangeError);
  });
});

describe("company limits", () => {
  it("follow the values in force", () => {
    const strict = { ...limits, "equipment.totalMaxRatioTwoStage": 1.05 };
    const found = sizingFindings(INPUT, strict).find((one) => one.ruleId === "equipment.total-capacity");
    expect(found?.verdict).toBe("falls short");
  });

  it("seed to the published numbers", () => {
    expect(limits).toEqual({
      "equipment.totalMinRatio": 0.9,
      "equipment.totalMaxRatioSingleSpeed": 1.15,
      "equipment.totalMaxRatioTwoStage": 1.2,
      "equipment.totalMaxRatioVariableSpeed": 1.3,
      "equipment.sensibleMinRatio": 0.9,
      "equipment.latentMinRatio": 1,
      "equipment.latentWarningMinRatio": 0.9,
      "equipment.coldClimateExcessBtuh": 15_000,
      "equipment.coldClimateDegreeDayRatio": 2,
      "equipment.coldClimateSensibleRatio": 0.95,
    });
  });
});
