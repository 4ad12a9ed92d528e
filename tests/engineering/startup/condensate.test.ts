import { expect, test } from "vitest";
import { airflowLimits } from "@/lib/engineering/airflow";
import { seedLimits } from "@/lib/engineering/limit-definition";
import { refrigerantLimits } from "@/lib/engineering/refrigerant";
import {
  condensateComparison,
  type StartupStage,
  startupFindings,
  startupLimits,
  startupRules,
} from "@/lib/engineering/startup";
import { bare, GOOD_STAGE, readWith, SITE, withReadings } from "./example-stage";

const SOURCE =
  "weight caught over the minutes, relative uncertainties added in squares, by hand arithmetic [C]; the allowed difference is common practice, no source [P]";

const LIMITS = {
  ...seedLimits(startupLimits),
  ...seedLimits(airflowLimits),
  ...seedLimits(refrigerantLimits),
};
const airSide = (value: number, expandedUncertainty: number) => ({
  value,
  standardUncertainty: expandedUncertainty / 2,
  expandedUncertainty,
  budget: [],
});
const findingFor = (stage: StartupStage) => {
  const found = startupFindings({ ...SITE, stages: [stage] }, LIMITS).find(
    (finding) => finding.ruleId === startupRules.condensate.id,
  );
  if (found === undefined) throw new Error("no finding on condensate");
  return found;
};

test(`8.5 lb in 60 min is 8.5 lb/h (1.02 gal/h) and agrees with 8.0 ± 0.6 lb/h: ${SOURCE}`, () => {
  const compared = condensateComparison({
    condensateLb: readWith(8.5, 0.1, "lb"),
    minutes: 60,
    moistureLbPerH: airSide(8, 0.6),
  });
  expect(compared.caughtLbPerH.value).toBeCloseTo(8.5, 12);
  expect(8.5 / 8.34).toBeCloseTo(1.02, 2);
  // U of the catch: 2·0.1/√3 = 0.115; together √(0.115² + 0.6²) = 0.611 ≥ 0.5.
  expect(compared.caughtLbPerH.expandedUncertainty).toBeCloseTo(0.11547, 5);
  expect(compared.agree).toBe(true);
  expect(compared.share?.value).toBeCloseTo(1.0625, 9);
  // Relative uncertainties in squares: √((0.11547/8.5)² + (0.6/8)²) = 0.07622 of 1.0625.
  expect(compared.share?.expandedUncertainty).toBeCloseTo(0.08098, 4);
});

test("2 lb in 15 min is 8 lb/h and does not agree with 5 ± 1 lb/h", () => {
  const compared = condensateComparison({
    condensateLb: readWith(2, 0.05, "lb"),
    minutes: 15,
    moistureLbPerH: airSide(5, 1),
  });
  expect(compared.caughtLbPerH.value).toBeCloseTo(8, 12);
  expect(compared.agree).toBe(false);
});

test("the ratio's budget knows what the other side leaves: better scale or better air side alone", () => {
  const { share } = condensateComparison({
    condensateLb: readWith(8, 0.8, "lb"),
    minutes: 60,
    moistureLbPerH: {
      ...airSide(8, 0.6),
      budget: [{ input: "airflowCfm", standardUncertainty: 40, sensitivity: 0.3 / 40, withoutIt: 0 }],
    },
  });
  // Ratio 1: without the scale u is 0.3/8, without the airflow 0.8/√3/8.
  const [scale, airflow] = share?.budget ?? [];
  expect(scale?.input).toBe("condensateLb");
  expect(scale?.withoutIt).toBeCloseTo(0.0375, 9);
  expect(airflow?.withoutIt).toBeCloseTo(0.057735, 5);
});

test("a dry air side gives no ratio", () => {
  const compared = condensateComparison({
    condensateLb: bare(0),
    minutes: 30,
    moistureLbPerH: airSide(0.01, 0.5),
  });
  expect(compared.share).toBeNull();
});

test("finding: too short a catch can't tell; far off falls short; nothing caught is not measured", () => {
  expect(findingFor({ ...GOOD_STAGE, condensateMinutes: 10 }).verdict).toBe("can't tell");
  expect(findingFor(withReadings({ condensateLb: readWith(0.5, 0.05, "lb") })).verdict).toBe("falls short");
  const missing = findingFor({ ...withReadings({ condensateLb: null }), condensateMinutes: null });
  expect(missing.verdict).toBe("not measured");
  expect(missing.inputs).toEqual(["stages.0.readings.condensateLb", "stages.0.condensateMinutes"]);
});
