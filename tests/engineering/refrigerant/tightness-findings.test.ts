import { describe, expect, test } from "vitest";
import { seedLimits } from "@/lib/engineering/limit-definition";
import {
  evacuationFindings,
  expectedTestPressurePsig,
  pressureTestFindings,
  refrigerantLimits,
} from "@/lib/engineering/refrigerant";

const limits = seedLimits(refrigerantLimits);
const GAS_SOURCE = "nitrogen test corrected by absolute temperature ratio [M+]";
const VACUUM_SOURCE = "≤ 500 microns and holding, times from the maker [F]";

describe(`pressure test: ${GAS_SOURCE}`, () => {
  test("400 psig at 90 °F falls to 384.9 psig at 70 °F without a leak", () => {
    // (400 + 14.696)·529.67/549.67 − 14.696 = 384.911.
    const expected = expectedTestPressurePsig({
      startPressurePsig: 400,
      startTempF: 90,
      endTempF: 70,
      sitePressurePsia: 14.696,
    });
    expect(expected).toBeCloseTo(384.911, 2);
  });

  const test400 = {
    startPressurePsig: 400,
    startTempF: 90,
    endPressurePsig: 385,
    endTempF: 70,
    sitePressurePsia: 14.696,
    dropUncertaintyPsi: 1,
  };
  test.each([
    [385, "meets"],
    [382, "can't tell"],
    [375, "falls short"],
    [null, "not measured"],
  ] as const)("end reading %d psig: %s", (endPressurePsig, verdict) => {
    expect(pressureTestFindings({ ...test400, endPressurePsig }, limits)[0]?.verdict).toBe(verdict);
  });

  test("without the correction the cooling would pass for a leak", () => {
    const [said] = pressureTestFindings({ ...test400, endTempF: 90 }, limits);
    expect(said?.verdict).toBe("falls short");
  });

  test("a wild reading is refused by name", () => {
    expect(() => pressureTestFindings({ ...test400, endPressurePsig: Number.NaN }, limits)).toThrow(
      /endPressurePsig/,
    );
  });
});

describe(`evacuation: ${VACUUM_SOURCE}`, () => {
  const good = { vacuumMicrons: 350, heldMicrons: 420, holdMinutes: 30, makerHoldMinutes: 30 };
  test.each([
    [{}, ["meets", "meets"]],
    [{ vacuumMicrons: 500, heldMicrons: 500 }, ["meets", "meets"]],
    [{ vacuumMicrons: 501 }, ["falls short", "meets"]],
    [{ heldMicrons: 800 }, ["meets", "falls short"]],
    [{ holdMinutes: 10 }, ["meets", "can't tell"]],
    [{ makerHoldMinutes: null }, ["meets", "not measured"]],
    [{ vacuumMicrons: null }, ["not measured", "meets"]],
  ] as const)("%o: %o", (change, verdicts) => {
    expect(evacuationFindings({ ...good, ...change }, limits).map((said) => said.verdict)).toEqual(verdicts);
  });

  test("a wild reading is refused by name", () => {
    expect(() => evacuationFindings({ ...good, heldMicrons: -1 }, limits)).toThrow(/heldMicrons/);
  });
});
