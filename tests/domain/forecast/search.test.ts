import { describe, expect, it } from "vitest";
import type { JobContext } from "@/lib/domain/evaluate";
import { optionSearch } from "@/lib/domain/forecast";
import { optionFromRecords } from "@/lib/domain/options";
import type { SearchFound } from "@/lib/engineering/simulation";
import { FULL_JOB } from "../../support/full-job";

/** The whole job without its dehumidifier, with a fan that runs between calls. */
const JOB: JobContext = {
  ...FULL_JOB,
  inputs: {
    ...FULL_JOB.inputs,
    load_summary: { ...FULL_JOB.inputs.load_summary, outdoorCoolingDbF: 94, heatingBtuh: 22_000 },
    equipment_selection: {
      ...FULL_JOB.inputs.equipment_selection,
      dehumidifierPintsPerDay: 0,
      dehumidifierAtHousePintsPerDay: null,
    },
    control_setup: { ...FULL_JOB.inputs.control_setup, fanBetweenCalls: "on" },
  },
};

function searchOf(job: JobContext) {
  const part = optionSearch(job, optionFromRecords(job.inputs), job.model, {});
  if (!part.ready) throw new Error(part.missing.map((one) => one.text).join("; "));
  return part.value;
}
const found = (place: Partial<SearchFound["place"]>) =>
  ({
    place: { capacity: 0, airflow: 0, controls: 0, ventilation: 0, dehumidifier: 0, ...place },
  }) as SearchFound;
const names = (choices: readonly { readonly name: string; readonly effort: number }[]) =>
  choices.map(({ name, effort }) => `${name}: ${effort}`);

describe("what may be set otherwise around an option", () => {
  const { space, fieldsOf, byHand } = searchOf(JOB);

  it("names every choice with its effort; what stands takes none", () => {
    // Set to 2 tons with the colder coil: another capacity takes 1, the coil's setting 1 more.
    expect(names(space.capacity)).toEqual([
      "2 tons: 1",
      "2 tons, colder coil: 0",
      "2.5 tons: 2",
      "2.5 tons, colder coil: 1",
      "3 tons: 2",
      "3 tons, colder coil: 1",
    ]);
    // The first stage keeps A, the weakest.
    expect(names(space.airflow)).toEqual([
      "A: 1",
      "B, first stage A: 0",
      "C, first stage A: 1",
      "D, first stage A: 1",
      "E, first stage A: 1",
    ]);
    expect(names(space.controls)[0]).toBe("as set: 0");
    expect(names(space.controls)).toContain("fan off between calls: 1");
    expect(space.ventilation.map(({ effort }) => effort)).toEqual([0, 5, 5]);
    expect(space.dehumidifier.map(({ effort }) => effort)).toEqual([0, 20, 21, 22, 23]);
  });

  it("gives every combination its own system", () => {
    const held = space.systems.map((row) => row.map((one) => one?.stages.at(-1)?.airflowCfm ?? null));
    expect(held).toHaveLength(6);
    expect(new Set(held[0]).size).toBe(5);
    expect(held.flat()).not.toContain(null);
  });

  it("says which fields of an option a combination stands for, and what is left to do by hand", () => {
    const off = space.controls.findIndex(({ name }) => name === "fan off between calls");
    const past = space.controls.findIndex(({ name }) => name.includes("past the setpoint"));
    expect(fieldsOf(found({ capacity: 4, airflow: 4, controls: off, dehumidifier: 2 }))).toEqual({
      capacitySetting: "3 tons",
      colderCoilCooling: false,
      secondStageAirflowSetting: "E",
      firstStageAirflowSetting: "A",
      fanBetweenCalls: "off",
      fanBetweenCallsMinPerH: null,
      dehumidifierPintsPerDay: 50,
      dehumidifierAtHousePintsPerDay: 50,
    });
    expect(byHand(found({ controls: off }))).toEqual([]);
    expect(byHand(found({ controls: past, ventilation: 2 }))).toEqual([
      "Control setup: cooling up to 2 °F past the setpoint while humid",
      "Ventilation: waits above 60 °F outdoor dew point",
    ]);
  });

  it("asks for what the option lacks before anything is searched", () => {
    const bare = { ...optionFromRecords(JOB.inputs), equipmentModelId: null };
    const part = optionSearch(JOB, bare, null, {});
    expect(part.ready ? [] : part.missing.map((one) => one.text)).toContain("Equipment selection: Equipment");
  });
});
