import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { activity } from "@/lib/db/activity";
import { catalog } from "@/lib/db/catalog";
import { closeDatabase } from "@/lib/db/client";
import { stageRecords } from "@/lib/db/stage-records";
import { asId } from "@/lib/domain/ids";
import { chooseOption } from "@/lib/services/choose-option";
import {
  addOption,
  chosenOption,
  moveOption,
  optionsView,
  removeOption,
  saveOption,
} from "@/lib/services/options";
import { twoStageHeatPump } from "@/seed/catalog/equipment";
import { type Crew, given, makeCrew } from "../support/people";
import { LOAD, openJob, refusedBy, save, sign } from "../support/service-jobs";

let crew: Crew;
let modelId: string;
beforeAll(async () => {
  crew = await makeCrew();
  modelId = await catalog(crew.office).addEquipment(twoStageHeatPump);
}, 60_000);
afterAll(closeDatabase);

const SELECTED = { capacitySetting: "3 tons", auxiliaryHeatKw: 8 };

async function jobWithOption() {
  const { office } = crew;
  const jobId = await openJob(office);
  await save(office, jobId, "load_summary", LOAD);
  await save(office, jobId, "equipment_selection", { equipmentModelId: modelId, ...SELECTED });
  const optionId = await addOption(office, { jobId, label: "As selected", copyOf: null });
  return { jobId, optionId };
}
const recordsOf = (jobId: string) => stageRecords(crew.office).latest(asId<"job">(jobId));
/** Chooses among two: a second option is added where there is one. */
const choose = async (jobId: string, optionId: string, more: object = {}) => {
  const { options } = await optionsView(crew.office, jobId);
  if (options.length < 2) await addOption(crew.office, { jobId, label: "Beside it", copyOf: optionId });
  return chooseNow(jobId, optionId, more);
};
const chooseNow = (jobId: string, optionId: string, more: object = {}) =>
  chooseOption(crew.office, {
    jobId,
    optionId,
    expectedVersion: 1,
    reason: "Dries best",
    reopenSigned: false,
    ...more,
  });

describe("options of a job", () => {
  test("the first begins with what the selection says; a copy stands beside it and keeps one change", async () => {
    const { jobId, optionId } = await jobWithOption();
    const copy = await addOption(crew.office, { jobId, label: "More heat", copyOf: optionId });
    const before = given((await optionsView(crew.office, jobId)).options[1]);
    await saveOption(crew.office, {
      jobId,
      optionId: copy,
      expectedVersion: 1,
      label: "More heat",
      inputs: { ...before.inputs, auxiliaryHeatKw: "10 kW" },
    });
    const { options, models } = await optionsView(crew.office, jobId);
    expect(options.map((one) => [one.label, one.inputs.auxiliaryHeatKw, one.version])).toEqual([
      ["As selected", 8, 1],
      ["More heat", 10, 2],
    ]);
    expect(Object.keys(models)).toEqual([modelId]);
  });

  test("reorder, remove, and at most six", async () => {
    const { jobId, optionId } = await jobWithOption();
    for (const label of ["b", "c", "d", "e", "f"])
      await addOption(crew.office, { jobId, label, copyOf: null });
    expect((await refusedBy(addOption(crew.office, { jobId, label: "g", copyOf: null }))).message).toContain(
      "at most 6",
    );
    await moveOption(crew.office, { jobId, optionId, by: 1 });
    const second = given((await optionsView(crew.office, jobId)).options[0]);
    await removeOption(crew.office, { jobId, optionId: second.id });
    const { options } = await optionsView(crew.office, jobId);
    expect(options.map((one) => one.label)).toEqual(["As selected", "c", "d", "e", "f"]);
  });

  test("a save from an older version is refused with both values; a wrong value is named", async () => {
    const { jobId, optionId } = await jobWithOption();
    const write = { jobId, optionId, expectedVersion: 1, label: "x", inputs: { auxiliaryHeatKw: 5 } };
    await saveOption(crew.office, write);
    const late = await refusedBy(saveOption(crew.office, write));
    expect([late.code, (late.details.theirs as { auxiliaryHeatKw: number }).auxiliaryHeatKw]).toEqual([
      "CONFLICT",
      5,
    ]);
    const wrong = { ...write, expectedVersion: 2, inputs: { auxiliaryHeatKw: "5 tons" } };
    expect((await refusedBy(saveOption(crew.office, wrong))).fields[0]?.field).toBe("auxiliaryHeatKw");
    const nothing = { ...write, expectedVersion: 2, inputs: { equipmentModelId: crypto.randomUUID() } };
    expect((await refusedBy(saveOption(crew.office, nothing))).fields[0]?.field).toBe("equipmentModelId");
  });
});

describe("choosing an option", () => {
  test("fills the later records and keeps the reason in the selection, the choice and the trail", async () => {
    const { jobId, optionId } = await jobWithOption();
    const { options } = await optionsView(crew.office, jobId);
    await saveOption(crew.office, {
      jobId,
      optionId,
      expectedVersion: 1,
      label: "Less air",
      inputs: {
        ...given(options[0]).inputs,
        secondStageAirflowSetting: "medium",
        designExternalStaticInWc: 0.5,
        colderCoilCooling: false,
        ventilationCfm: 60,
      },
    });
    await choose(jobId, optionId, { expectedVersion: 2 });
    const records = await recordsOf(jobId);
    expect(records.load_summary?.inputs).toMatchObject({ ventilationCfm: 60, sensibleCoolingBtuh: 22_000 });
    expect(records.equipment_selection?.inputs).toMatchObject({ ...SELECTED, reason: "Dries best" });
    expect(records.airflow_setup?.inputs).toMatchObject({
      secondStageAirflowSetting: "medium",
      designExternalStaticInWc: 0.5,
    });
    expect(records.control_setup?.inputs).toMatchObject({ colderCoilCooling: false, coolingSetpointF: null });
    const { choice } = await optionsView(crew.office, jobId);
    expect(choice).toMatchObject({ optionId, label: "Less air", reason: "Dries best" });
    const trail = await activity(crew.office).list({ jobId, take: 20 });
    expect(trail.find((one) => one.action === "option chosen")?.reason).toBe("Dries best");
  });

  test("one option alone is not chosen", async () => {
    const { jobId, optionId } = await jobWithOption();
    expect((await refusedBy(chooseNow(jobId, optionId))).message).toMatch(/no comparison/);
    expect((await optionsView(crew.office, jobId)).choice).toBeNull();
    await addOption(crew.office, { jobId, label: "Beside it", copyOf: optionId });
    await chooseNow(jobId, optionId);
    expect(await chosenOption(crew.office, asId<"job">(jobId))).toMatchObject({
      label: "As selected",
      reason: "Dries best",
    });
  });

  test("can be changed later with a new reason; the chosen one cannot be removed", async () => {
    const { jobId, optionId } = await jobWithOption();
    const other = await addOption(crew.office, { jobId, label: "Other", copyOf: optionId });
    await choose(jobId, optionId);
    expect((await refusedBy(removeOption(crew.office, { jobId, optionId }))).code).toBe("CONFLICT");
    await choose(jobId, other, { reason: "Cheaper to run" });
    expect((await optionsView(crew.office, jobId)).choice).toMatchObject({
      label: "Other",
      reason: "Cheaper to run",
    });
    expect((await recordsOf(jobId)).equipment_selection?.inputs.reason).toBe("Cheaper to run");
    await removeOption(crew.office, { jobId, optionId });
  });

  test("a signed record that would change is never overwritten: refused, or reopened when asked for", async () => {
    const { jobId, optionId } = await jobWithOption();
    await sign(crew.office, jobId, "equipment_selection", 1);
    const { options } = await optionsView(crew.office, jobId);
    const inputs = { ...given(options[0]).inputs, auxiliaryHeatKw: 10 };
    await saveOption(crew.office, { jobId, optionId, expectedVersion: 1, label: "More heat", inputs });
    const refused = await refusedBy(choose(jobId, optionId, { expectedVersion: 2 }));
    expect([refused.code, refused.details.signed]).toEqual(["SIGNED_RECORD", ["equipment_selection"]]);
    expect((await optionsView(crew.office, jobId)).choice).toBeNull();
    expect((await recordsOf(jobId)).equipment_selection).toMatchObject({ state: "signed", revision: 1 });
    await choose(jobId, optionId, { expectedVersion: 2, reopenSigned: true });
    const revisions = await stageRecords(crew.office).revisions(asId<"job">(jobId), "equipment_selection");
    expect(
      revisions.map((one) => [
        one.revision,
        one.state,
        (one.inputs as { auxiliaryHeatKw: number | null }).auxiliaryHeatKw,
      ]),
    ).toEqual([
      [2, "draft", 10],
      [1, "signed", 8],
    ]);
  });

  test("a signed record that says the same stays signed; an option changed meanwhile is not chosen", async () => {
    const { jobId, optionId } = await jobWithOption();
    await sign(crew.office, jobId, "equipment_selection", 1);
    await choose(jobId, optionId);
    expect((await recordsOf(jobId)).equipment_selection?.state).toBe("signed");
    expect((await optionsView(crew.office, jobId)).choice?.reason).toBe("Dries best");
    expect((await refusedBy(choose(jobId, optionId, { expectedVersion: 7 }))).code).toBe("CONFLICT");
  });

  test("another company's option is nothing", async () => {
    const { optionId } = await jobWithOption();
    const { jobId } = await jobWithOption();
    expect((await refusedBy(chooseNow(jobId, optionId))).code).toBe("NOT_FOUND");
  });
});
