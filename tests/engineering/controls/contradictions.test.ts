import { describe, expect, it } from "vitest";
import { type ControlFindingsInput, controlFindings, controlsRules } from "@/lib/engineering/controls";
import { board, house, input, settings } from "./example-input";

const SOURCE =
  "contradictions follow from what the settings mean [C]; the overshoot and rest rows from C·dT/dt = load − capacity, arithmetic beside each";

const CONTRADICTIONS = Object.values(controlsRules)
  .filter(({ checkedBy }) => checkedBy.endsWith("contradictions.test.ts"))
  .map(({ id }) => id as string);
const contradictionsOf = (asked: ControlFindingsInput) =>
  controlFindings(asked).filter(({ ruleId }) => CONTRADICTIONS.includes(ruleId));

type Change = Partial<ControlFindingsInput>;
const set = (change: Partial<typeof settings>): Change => ({ settings: { ...settings, ...change } });
const put = (change: Partial<typeof board>): Change => ({ board: { ...board, ...change } });

describe(`contradictions: ${SOURCE}`, () => {
  it.each<[string, Change]>([
    ["controls.second-stage-below-first", set({ secondStageStartOffsetF: 0.5 })],
    ["controls.fan-minutes", set({ fanBetweenCallsMinPerH: 10 })],
    ["controls.fan-over-wet-coil", set({ fanBetweenCalls: "on" })],
    ["controls.second-stage-not-wired", { coolingStagesWired: 1 }],
    ["controls.fan-second-stage-not-wired", { fanStagesWired: 1 }],
    ["controls.airflow-order", put({ airflowSettingCfmByStage: [1_000, 700] })],
    ["controls.airflow-count", put({ airflowSettingCfmByStage: [700] })],
    [
      "controls.stage-wired-to-nothing",
      { equipmentStages: 1, board: { ...board, airflowSettingCfmByStage: [700] } },
    ],
    [
      "controls.cold-coil-run-on",
      { board: { ...board, colderCoilCooling: true }, ...set({ fanRunOnAfterCoolingS: 60 }) },
    ],
    // Part load 12,000 − 18,000 = −6,000 Btu/h; settled −7.5 °F; from +1: −7.5 + 8.5·e^(−800·1/8,000) = 0.191 after
    // 1 h at C 8,000, but at C 1,000 −7.5 + 8.5·e^(−0.8) = −3.68 °F, 3.68 below the setpoint.
    [
      "controls.minimum-run-overshoots",
      { house: { ...house, capacitanceBtuPerF: 1_000 }, ...set({ minimumCompressorRunMin: 60 }) },
    ],
    // Design 24,000/800 = 30 °F above; 30·(1 − e^(−800·0.5/2,000)) = 5.4 °F after 30 min, above the 2 °F offset.
    [
      "controls.rest-forces-second-stage",
      { house: { ...house, capacitanceBtuPerF: 2_000 }, ...set({ minimumCompressorRestMin: 30 }) },
    ],
  ])("%s is found, and nothing else", (ruleId, change) => {
    const found = contradictionsOf({ ...input, ...change });
    expect(found.map((one) => [one.ruleId, one.verdict])).toEqual([[ruleId, "falls short"]]);
    expect(found[0]?.nextStep).not.toBeNull();
    expect(found[0]?.inputs.length).toBeGreaterThan(0);
  });

  it("numbers in the statements are those of the arithmetic", () => {
    const overshoot = contradictionsOf({
      ...input,
      house: { ...house, capacitanceBtuPerF: 1_000 },
      ...set({ minimumCompressorRunMin: 60 }),
    });
    expect(overshoot[0]?.statement).toContain("3.7 °F below");
    const rest = contradictionsOf({
      ...input,
      house: { ...house, capacitanceBtuPerF: 2_000 },
      ...set({ minimumCompressorRestMin: 30 }),
    });
    expect(rest[0]?.statement).toContain("5.4 °F above");
  });

  it("an hour's minimum run at 8,000 Btu/°F ends 0.19 °F above setpoint: no contradiction", () => {
    expect(contradictionsOf({ ...input, ...set({ minimumCompressorRunMin: 60 }) })[0]?.verdict).toBe("meets");
  });

  it("a clean job meets; an unfinished one is not measured and names what is missing", () => {
    expect(contradictionsOf(input).map((one) => one.verdict)).toEqual(["meets"]);
    const [unfinished] = contradictionsOf({ ...input, house: null, fanStages: null });
    expect(unfinished?.verdict).toBe("not measured");
    expect(unfinished?.inputs).toEqual(["fanStages", "house"]);
  });
});
