import { describe, expect, it } from "vitest";
import { evaluateJob } from "@/lib/domain/evaluate";
import { forecastFindings } from "@/lib/domain/evaluate/forecast";
import { type ForecastInForce, forecastSentence } from "@/lib/domain/forecast";
import { worstVerdict } from "@/lib/domain/jobs";
import { FULL_JOB } from "../../support/full-job";

const SOURCE =
  "The share of hours is the company limit logs.dryShareMinPct (common practice, no source); a model's verdict is unverified and binds nothing.";

/** Central, low and high dry-hours of 8,760; what nothing here reads is left out. */
function kept(
  dry: readonly [number, number, number],
  change: Partial<ForecastInForce> = {},
  warm = 0,
): ForecastInForce {
  const [central, low, high] = dry;
  const figures = {
    ranges: {
      dryHours: { central, low, high },
      hoursAboveLimit: { central: 8_760 - central, low: 8_760 - high, high: 8_760 - low },
      aboveSetpointDegreeHours: { central: warm, low: warm, high: warm },
      hottestF: { central: 82.6, low: 82, high: 83 },
    },
  } as unknown as ForecastInForce["figures"];
  return {
    id: "1",
    optionLabel: "Two tons",
    weatherFileId: "2",
    weatherName: "Invented Bay",
    engineVersion: "1",
    inputsHash: "",
    seed: 1,
    members: 10,
    humidityLimitPct: 55,
    inputs: { changed: { house: {}, system: {} } } as ForecastInForce["inputs"],
    keptAt: "2026-07-01T12:00:00.000Z",
    keptByName: "Ann",
    supersededAt: null,
    stale: false,
    figures,
    ...change,
  };
}
const said = (forecast: ForecastInForce | null) => forecastFindings({ ...FULL_JOB, forecast })[0];

describe(`the kept forecast as a finding: ${SOURCE}`, () => {
  // 95 % of 8,760 h is 8,322 h.
  const needed = FULL_JOB.limits["logs.dryShareMinPct"] * 87.6;

  it.each([
    ["meets", [needed + 200, needed + 1, needed + 300]],
    ["falls short", [needed - 200, needed - 900, needed - 1]],
    ["can't tell", [needed + 100, needed - 100, needed + 200]],
  ] as const)("says “%s” by the whole range", (verdict, dry) => {
    expect(said(kept(dry))?.verdict).toBe(verdict);
  });

  it("does not call a house dry that is not cooled, and says so", () => {
    const dry = [needed + 200, needed + 1, needed + 300] as const;
    expect(said(kept(dry, {}, 500))?.verdict).toBe("meets");
    const warm = said(kept(dry, {}, 2_530));
    expect(warm?.verdict).toBe("can't tell");
    expect(warm?.statement).toMatch(/2,530 degree-hours .* 82\.6 °F at the hottest/);
    expect(warm?.nextStep).toMatch(/more capacity first/);
    expect(said(kept([1_000, 900, 1_100], {}, 2_530))?.verdict).toBe("falls short");
  });

  it("never fails a job by itself", () => {
    const weak = said(kept([1_000, 900, 1_100]));
    expect(weak?.binding).toBe(false);
    expect(weak?.basis.source).toMatch(/^model forecast/);
    const before = evaluateJob(FULL_JOB).verdicts.equipment_selection;
    const after = evaluateJob({ ...FULL_JOB, forecast: kept([1_000, 900, 1_100]) });
    expect(after.verdicts.equipment_selection).toBe(before);
    expect(worstVerdict(weak ? [weak] : [])).not.toBe("falls short");
  });

  it("says nothing while none is kept, and judges nothing by a stale one", () => {
    expect(forecastFindings(FULL_JOB)).toEqual([]);
    expect(said(kept([1_000, 900, 1_100], { stale: true }))).toMatchObject({ verdict: null });
  });

  it("stands in the ledger as a range", () => {
    const { ledger } = evaluateJob({ ...FULL_JOB, forecast: kept([8_000, 7_500, 8_400]) });
    const line = ledger.find((one) => one.key === "forecast-dry-hours");
    expect(line?.cells.designed).toMatchObject({ value: 8_000, note: "7,500 to 8,400 of 8,760 h" });
    expect(evaluateJob(FULL_JOB).ledger.some((one) => one.key === "forecast-dry-hours")).toBe(false);
  });

  it("is one plain sentence for a homeowner", () => {
    expect(forecastSentence(kept([8_000, 7_500, 8_400]))).toBe(
      "In a typical year (Invented Bay) this design is forecast to keep the house at or below 55 % for about 8,000 of 8,760 hours, and from 7,500 to 8,400 for what is not known of the house and the year.",
    );
  });
});
