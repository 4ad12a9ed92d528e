import { afterAll, beforeAll, expect, test } from "vitest";
import { activity } from "@/lib/db/activity";
import { catalog } from "@/lib/db/catalog";
import { catalogVersions } from "@/lib/db/catalog-versions";
import { closeDatabase } from "@/lib/db/client";
import { instruments } from "@/lib/db/instruments";
import { asId } from "@/lib/domain/ids";
import {
  importTableSchema,
  saveControlSchema,
  saveEquipmentSchema,
  saveInstrumentSchema,
} from "@/lib/schemas/catalog";
import { readBlock, suggestMapping } from "@/lib/schemas/catalog-table";
import { calibrationHistory, retiredView } from "@/lib/services/catalog";
import {
  bringControlBack,
  duplicateEquipment,
  importTable,
  retireControl,
  retireEquipment,
  retireInstrument,
  saveControl,
  saveEquipment,
  saveInstrument,
  undoVersion,
} from "@/lib/services/catalog-edit";
import {
  jobControlVersion,
  jobVersion,
  moveJobToControl,
  moveJobToVersion,
} from "@/lib/services/catalog-jobs";
import { jobView, stageView } from "@/lib/services/job-view";
import { psychrometer } from "@/seed/catalog/instruments";
import { EQUIPMENT_FORM } from "../support/door-samples";
import { type Crew, given, makeCrew } from "../support/people";
import { openJob, save } from "../support/service-jobs";

let crew: Crew;
beforeAll(async () => {
  crew = await makeCrew();
});
afterAll(closeDatabase);

const form = (change: object = {}) => saveEquipmentSchema.parse({ ...EQUIPMENT_FORM, ...change });
const model = async (id: string) =>
  given(await catalog(crew.office).findEquipment(asId<"equipment model">(id)));

function pasted(modelId: string, text: string, how: "replace" | "add" = "replace") {
  const block = readBlock(text);
  if ("kind" in block) throw new Error(block.reason);
  const { headings, rows } = block;
  return importTableSchema.parse({
    modelId,
    kind: "fan",
    how,
    headings,
    rows,
    mapping: suggestMapping("fan", block),
  });
}
const FAN = "Tap\tESP in. w.c.\tCFM\nhigh\t0.1\t1,250\nhigh\t0.3\t1,300\nhigh\t0.5\t1,150\n";

test("a job keeps the version it was designed with, is told of the newer one, and moves when asked", async () => {
  const first = await saveEquipment(crew.office, form());
  const jobId = await openJob(crew.office);
  await save(crew.office, jobId, "equipment_selection", {
    equipmentModelId: first,
    capacitySetting: "3 tons",
  });
  const second = await saveEquipment(crew.office, form({ modelId: first, maxExternalStaticInWc: "0.6" }));
  expect(second).not.toBe(first);
  const before = await jobView(crew.office, jobId);
  expect(before.context.model?.data.limits.maxExternalStaticInWc).toBe(0.8);
  expect(await jobVersion(crew.office, given(before.context.model))).toMatchObject({
    version: 1,
    newer: { id: second, version: 2, changes: ["Maximum external static, in. w.c.: 0.8 → 0.6"] },
  });
  const choices = (await stageView(crew.office, jobId, "equipment_selection")).choices.equipment;
  expect(choices.map(({ value }) => value)).toEqual(expect.arrayContaining([first, second]));
  await moveJobToVersion(crew.office, { jobId, expectedVersion: 1, versionId: second });
  const after = await jobView(crew.office, jobId);
  expect(after.context.model?.data.limits.maxExternalStaticInWc).toBe(0.6);
  expect(after.records.equipment_selection?.inputs.capacitySetting).toBe("3 tons");
  const versions = await catalogVersions(crew.office, "equipment").list(first);
  expect(versions.map(({ version, jobs }) => [version, jobs.length])).toEqual([
    [2, 1],
    [1, 0],
  ]);
  await expect(undoVersion(crew.office, second)).rejects.toThrow(/already rests on this version/);
});

test("a change made from an older version is refused, and one that changes nothing makes none", async () => {
  const first = await saveEquipment(crew.office, form({ name: "Race" }));
  expect(await saveEquipment(crew.office, form({ name: "Race", modelId: first }))).toBe(first);
  await saveEquipment(crew.office, form({ name: "Race two", modelId: first }));
  await expect(saveEquipment(crew.owner, form({ name: "Race three", modelId: first }))).rejects.toThrow(
    /since you opened/,
  );
});

test("an import keeps the good rows, counts the refused, stands on the trail and can be taken back", async () => {
  const first = await saveEquipment(crew.office, form({ name: "Pasted" }));
  const done = await importTable(crew.office, pasted(first, FAN));
  expect(done).toMatchObject({ kept: 2, refused: 1 });
  expect((await model(done.modelId)).fan.map(({ airflowCfm }) => airflowCfm)).toEqual([1250, 1150]);
  expect((await model(first)).fan).toEqual([]);
  const lines = await activity(crew.owner).list({ take: 5 });
  expect(lines[0]).toMatchObject({ action: "equipment fan table imported", entityId: done.modelId });
  expect(await undoVersion(crew.office, done.modelId)).toBe(first);
  const listed = (await catalog(crew.office).listEquipment()).filter(({ name }) => name === "Pasted");
  expect(listed.map(({ id }) => id)).toEqual([first]);
  // A new import after the undo is version 3, never the number of the one taken back.
  const again = await importTable(crew.office, pasted(first, FAN));
  expect((await model(again.modelId)).version).toBe(3);
});

test("adding rows refuses those the model already has", async () => {
  const first = await saveEquipment(crew.office, form({ name: "Added" }));
  const one = await importTable(crew.office, pasted(first, FAN));
  await expect(importTable(crew.office, pasted(one.modelId, FAN, "add"))).rejects.toThrow(
    /No row can be kept/,
  );
  const more = await importTable(
    crew.office,
    pasted(one.modelId, "Tap\tESP in. w.c.\tCFM\nlow\t0.1\t800\nlow\t0.5\t700\n", "add"),
  );
  expect((await model(more.modelId)).fan).toHaveLength(4);
});

test("a retired model and a retired instrument leave the lists and stay with their jobs", async () => {
  const id = await saveEquipment(crew.office, form({ name: "Gone" }));
  const copy = await duplicateEquipment(crew.office, id);
  const tool = await instruments(crew.office).add(psychrometer);
  const jobId = await openJob(crew.office);
  await save(crew.office, jobId, "equipment_selection", { equipmentModelId: id });
  await retireEquipment(crew.office, id);
  await retireInstrument(crew.office, tool, true);
  const names = (await catalog(crew.office).listEquipment()).map(({ name }) => name);
  expect(names).not.toContain("Gone");
  expect(names).toContain("Gone (copy)");
  expect((await model(copy)).familyId).not.toBe((await model(id)).familyId);
  const { context } = await jobView(crew.office, jobId);
  expect(context.model?.name).toBe("Gone");
  expect(context.instruments.map((one) => one.id)).toContain(tool);
  expect(context.instruments.filter((one) => one.retired).map((one) => one.id)).toEqual([tool]);
  expect((await instruments(crew.office).list()).map((one) => one.id)).not.toContain(tool);
});

test("a thermostat's change is a new version; a job with the old one keeps its stages", async () => {
  const one = {
    controlId: null,
    maker: "Invented",
    name: "T",
    stages: "1",
    makerLabels: { fanBetweenCalls: "Idle" },
  };
  const first = await saveControl(crew.office, saveControlSchema.parse(one));
  const jobId = await openJob(crew.office);
  await save(crew.office, jobId, "control_setup", { controlModelId: first });
  await saveControl(crew.office, saveControlSchema.parse({ ...one, controlId: first, stages: "2" }));
  expect((await jobView(crew.office, jobId)).context.controlStages).toBe(1);
  const listed = (await catalog(crew.office).listControls()).filter(({ name }) => name === "T");
  expect(listed.map(({ data }) => data.stages)).toEqual([2]);
});

test("a job is told of its thermostat's newer version and moves when asked; a retired one is listed and comes back", async () => {
  const one = { controlId: null, maker: "Invented", name: "Moved", stages: "1", makerLabels: {} };
  const first = await saveControl(crew.office, saveControlSchema.parse(one));
  const jobId = await openJob(crew.office);
  await save(crew.office, jobId, "control_setup", { controlModelId: first, fanBetweenCalls: "off" });
  const second = await saveControl(
    crew.office,
    saveControlSchema.parse({
      ...one,
      controlId: first,
      stages: "2",
      makerLabels: { fanBetweenCalls: "Idle" },
    }),
  );
  const before = await stageView(crew.office, jobId, "control_setup");
  // The crew card keeps the labels of the version the job rests on.
  expect(before.control?.id).toBe(first);
  const version = await jobControlVersion(crew.office, given(before.control));
  expect(version).toMatchObject({ version: 1, newer: { id: second, version: 2 } });
  expect(version.newer?.changes).toEqual([
    "Cooling stages: 1 → 2",
    expect.stringMatching(/^Maker's label of “.*”: not given → Idle$/),
  ]);
  const ask = { jobId, expectedVersion: 1, versionId: second };
  const stranger = await saveControl(crew.office, saveControlSchema.parse({ ...one, name: "Another" }));
  await expect(moveJobToControl(crew.office, { ...ask, versionId: stranger })).rejects.toThrow();
  await moveJobToControl(crew.office, ask);
  const after = await jobView(crew.office, jobId);
  expect(after.context.controlStages).toBe(2);
  expect(after.records.control_setup?.inputs.fanBetweenCalls).toBe("off");

  const gone = async () => (await retiredView(crew.office)).filter(({ name }) => name === "Invented Moved");
  expect(await gone()).toEqual([]);
  await retireControl(crew.office, second);
  expect(await gone()).toMatchObject([{ kind: "thermostat", id: second }]);
  expect((await stageView(crew.office, jobId, "control_setup")).control?.id).toBe(second);
  await bringControlBack(crew.office, second);
  expect(await gone()).toEqual([]);
  expect((await catalog(crew.office).listControls()).map(({ id }) => id)).toContain(second);
  const [line] = await activity(crew.owner).list({ take: 1 });
  expect(line).toMatchObject({ action: "thermostat brought back", entityId: second });
});

test("an instrument's new calibration stands on the trail; an old copy of it is refused", async () => {
  const sample = {
    instrumentId: null,
    expectedVersion: null,
    name: "Probe",
    kind: "hygrometer",
    serialNumber: "",
    accuracy: [
      { quantity: "dry bulb", unit: "°F", plusMinus: "0.5", percentOfReading: "0", statedAs: "limits" },
    ],
    calibratedOn: "2025-07-01",
    calibrationDueOn: "2026-07-01",
  };
  const id = await saveInstrument(crew.office, saveInstrumentSchema.parse(sample));
  const next = {
    ...sample,
    instrumentId: id,
    expectedVersion: 1,
    calibratedOn: "2026-06-20",
    calibrationDueOn: "2027-06-20",
  };
  await saveInstrument(crew.office, saveInstrumentSchema.parse(next));
  const [line] = await activity(crew.owner).list({ take: 1 });
  expect(line).toMatchObject({
    action: "instrument calibrated",
    before: { calibratedOn: "2025-07-01" },
    after: { calibratedOn: "2026-06-20" },
  });
  expect(await calibrationHistory(crew.office, id)).toMatchObject([
    { calibratedOn: "2026-06-20", calibrationDueOn: "2027-06-20", accuracy: ["dry bulb ± 0.5 °F and 0 %"] },
  ]);
  await expect(saveInstrument(crew.owner, saveInstrumentSchema.parse(next))).rejects.toThrow(
    /since you opened/,
  );
});
