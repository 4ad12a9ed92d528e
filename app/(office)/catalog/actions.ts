"use server";

import { revalidatePath } from "next/cache";
import {
  equipmentIdSchema,
  importTableSchema,
  moveToVersionSchema,
  retireControlSchema,
  retireInstrumentSchema,
  saveControlSchema,
  saveEquipmentSchema,
  saveInstrumentSchema,
} from "@/lib/schemas/catalog";
import { action } from "@/lib/server/action";
import * as edit from "@/lib/services/catalog-edit";
import { moveJobToControl, moveJobToVersion } from "@/lib/services/catalog-jobs";

const changed = <T>(value: T): T => {
  revalidatePath("/catalog", "layout");
  return value;
};

export const keepEquipment = action({
  name: "save equipment",
  permission: "catalog.edit",
  schema: saveEquipmentSchema,
  run: async (scope, input) => changed((await edit.saveEquipment(scope, input)) as string),
});

export const copyEquipment = action({
  name: "duplicate equipment",
  permission: "catalog.edit",
  schema: equipmentIdSchema,
  run: async (scope, { modelId }) => changed((await edit.duplicateEquipment(scope, modelId)) as string),
});

export const keepTable = action({
  name: "import table",
  permission: "catalog.edit",
  schema: importTableSchema,
  run: async (scope, input) => changed(await edit.importTable(scope, input)),
});

export const takeVersionBack = action({
  name: "take version back",
  permission: "catalog.edit",
  schema: equipmentIdSchema,
  run: async (scope, { modelId }) => changed((await edit.undoVersion(scope, modelId)) as string),
});

export const retireModel = action({
  name: "retire equipment",
  permission: "catalog.edit",
  schema: equipmentIdSchema,
  run: async (scope, { modelId }) => changed(await edit.retireEquipment(scope, modelId)),
});

export const bringModelBack = action({
  name: "bring equipment back",
  permission: "catalog.edit",
  schema: equipmentIdSchema,
  run: async (scope, { modelId }) => changed(await edit.bringEquipmentBack(scope, modelId)),
});

export const moveJob = action({
  name: "move job to version",
  permission: "design.edit",
  schema: moveToVersionSchema,
  run: async (scope, input) => {
    await moveJobToVersion(scope, input);
    revalidatePath(`/jobs/${input.jobId}`, "layout");
  },
});

export const keepThermostat = action({
  name: "save thermostat",
  permission: "catalog.edit",
  schema: saveControlSchema,
  run: async (scope, input) => changed((await edit.saveControl(scope, input)) as string),
});

export const retireThermostat = action({
  name: "retire thermostat",
  permission: "catalog.edit",
  schema: retireControlSchema,
  run: async (scope, { controlId }) => changed(await edit.retireControl(scope, controlId)),
});

export const bringThermostatBack = action({
  name: "bring thermostat back",
  permission: "catalog.edit",
  schema: retireControlSchema,
  run: async (scope, { controlId }) => changed(await edit.bringControlBack(scope, controlId)),
});

export const moveJobsThermostat = action({
  name: "move job to thermostat version",
  permission: "design.edit",
  schema: moveToVersionSchema,
  run: async (scope, input) => {
    await moveJobToControl(scope, input);
    revalidatePath(`/jobs/${input.jobId}`, "layout");
  },
});

export const keepInstrument = action({
  name: "save instrument",
  permission: "catalog.edit",
  schema: saveInstrumentSchema,
  run: async (scope, input) => changed((await edit.saveInstrument(scope, input)) as string),
});

export const retireTool = action({
  name: "retire instrument",
  permission: "catalog.edit",
  schema: retireInstrumentSchema,
  run: async (scope, { instrumentId, retired }) =>
    changed(await edit.retireInstrument(scope, instrumentId, retired)),
});
