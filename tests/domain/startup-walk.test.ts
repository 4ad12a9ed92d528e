import { describe, expect, test } from "vitest";
import { emptyStage, STAGE_FIELDS } from "@/lib/domain/stages";
import { foundKey, PAIRED_KEYS } from "@/lib/domain/stages/startup-found";
import { correctionFor, dropsOf } from "@/lib/domain/startup-sums";
import {
  missingNames,
  otherStageKey,
  placeOfField,
  screenState,
  startupWalk,
} from "@/lib/domain/startup-walk";
import { FULL_JOB } from "../support/full-job";

const context = FULL_JOB;
const empty = emptyStage("startup_record");
const walk = (values: Readonly<Record<string, string | number | boolean | null>> = {}) =>
  startupWalk(context, { ...empty, ...values });
const ids = (values = {}) => walk(values).map((screen) => screen.id);

describe("the walk through a startup", () => {
  test("names each screen once and only fields that exist", () => {
    const all = ids({ circuitOpened: true, secondAirflowMethod: "temperature rise" });
    expect(new Set(all).size).toBe(all.length);
    for (const screen of walk({ circuitOpened: true }))
      for (const field of [...screen.fields, ...(screen.instrument ? [screen.instrument] : [])])
        expect(STAGE_FIELDS.startup_record).toHaveProperty(field);
  });

  test("every field leads to the screen where it is entered", () => {
    const at = (key: keyof typeof empty) => placeOfField(key, walk());
    expect(at("secondReturnRhPct")).toBe("secondReturnMoisture");
    expect([at("notes"), at("leftCoolingSetpointF"), at("customerShownName")]).toEqual([
      "photos",
      "settings",
      "finish",
    ]);
  });

  test("asks for everything that is needed before signing", () => {
    const asked = new Set<string>(walk().flatMap((screen) => screen.fields));
    const needed = Object.entries(STAGE_FIELDS.startup_record).filter(([, field]) => field.neededToSign);
    expect(needed.length).toBeGreaterThan(3);
    expect(needed.map(([key]) => key).filter((key) => !asked.has(key))).toEqual([]);
    expect(missingNames(empty)).toHaveLength(needed.length);
  });

  test("leaves out what does not apply", () => {
    expect(ids()).not.toContain("vacuum");
    expect(ids({ circuitOpened: true })).toContain("vacuum");
    expect(ids()).not.toContain("secondHeatRise");
    expect(ids({ secondAirflowMethod: "temperature rise" })).toContain("secondHeatRise");
    const oneStage = { ...context, controlStages: 1 as const };
    expect(startupWalk(oneStage, empty).some((screen) => screen.section === "First stage")).toBe(false);
  });

  test("a wet bulb or a relative humidity completes a screen, half of a pair only begins it", () => {
    const find = (id: string) => walk().find((screen) => screen.id === id) ?? expect.fail(id);
    expect(screenState(find("secondReturnMoisture"), { ...empty, secondReturnRhPct: 50 })).toBe("done");
    expect(screenState(find("secondCondensate"), { ...empty, secondCondensateLb: 4 })).toBe("begun");
    expect(screenState(find("secondCondensate"), empty)).toBe("empty");
    // Zero and "no" are answers.
    expect(screenState(find("circuitOpened"), { ...empty, circuitOpened: false })).toBe("done");
    expect(screenState(find("secondReturnStaticInWc"), { ...empty, secondReturnStaticInWc: 0 })).toBe("done");
  });

  test("a reading has its partner at the other stage and as found", () => {
    expect(otherStageKey("firstReturnDbF")).toBe("secondReturnDbF");
    expect(otherStageKey("outdoorDbF")).toBeNull();
    for (const key of PAIRED_KEYS) expect(STAGE_FIELDS.startup_record).toHaveProperty(foundKey(key));
  });
});

describe("plain sums of a screen", () => {
  test("what filter and coil take: 0.12 to 0.33 in. w.c. is 0.21, whatever the sign", () => {
    const values = { secondBeforeFilterInWc: -0.12, secondAfterFilterInWc: -0.33, secondBeforeCoilInWc: 0.4 };
    const [filter, ...others] = dropsOf("second", values, context);
    expect(filter?.inWc).toBeCloseTo(0.21, 10);
    expect(others).toEqual([]);
  });

  test("the correction to leave is the one in force plus what the thermostat is off by", () => {
    const controls = { ...context.inputs.control_setup, indoorTemperatureCorrectionF: -1 };
    const set = { ...context, inputs: { ...context.inputs, control_setup: controls } };
    const values = { thermostatReadsF: 75, trustedReadsF: 75.4 };
    // −1 + (75.4 − 75) = −0.6
    expect(correctionFor("temperature", values, set)).toMatchObject({ difference: 0.4, next: -0.6 });
    const unknown = { ...controls, indoorTemperatureCorrectionF: null };
    const open = { ...context, inputs: { ...context.inputs, control_setup: unknown } };
    expect(correctionFor("temperature", values, open)?.next).toBeNull();
    expect(correctionFor("temperature", { thermostatReadsF: 75 }, set)).toBeNull();
  });
});
