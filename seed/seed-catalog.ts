import { catalog, type NewEquipmentModel } from "@/lib/db/catalog";
import { instruments } from "@/lib/db/instruments";
import type { EquipmentModel } from "@/lib/domain/catalog";
import type { TenantScope } from "@/lib/domain/scope";
import { oneStageThermostat, twoStageThermostat } from "./catalog/controls";
import { heldCoilHeatPump, singleSpeedCooler, twoStageHeatPump } from "./catalog/equipment";
import {
  flowPlate,
  gauges,
  manometer,
  meter,
  oldFlowHood,
  pocketHygrometer,
  psychrometer,
  scale,
} from "./catalog/instruments";
import type { DemoWorld } from "./world";

/** Puts the invented makers' models, thermostats and the company's instruments into its catalog. */
export async function seedCatalog(
  office: TenantScope,
): Promise<Pick<DemoWorld, "equipment" | "controls" | "instruments">> {
  const tools = instruments(office);
  return {
    equipment: {
      heldCoil: await addModel(office, heldCoilHeatPump),
      twoStage: await addModel(office, twoStageHeatPump),
      singleSpeed: await addModel(office, singleSpeedCooler),
    },
    controls: {
      twoStage: await catalog(office).addControl(twoStageThermostat),
      oneStage: await catalog(office).addControl(oneStageThermostat),
    },
    instruments: {
      psychrometer: await tools.add(psychrometer),
      pocketHygrometer: await tools.add(pocketHygrometer),
      flowPlate: await tools.add(flowPlate),
      manometer: await tools.add(manometer),
      oldFlowHood: await tools.add(oldFlowHood),
      gauges: await tools.add(gauges),
      meter: await tools.add(meter),
      scale: await tools.add(scale),
    },
  };
}

async function addModel(office: TenantScope, model: NewEquipmentModel): Promise<EquipmentModel> {
  const id = await catalog(office).addEquipment(model);
  const kept = await catalog(office).findEquipment(id);
  if (!kept) throw new Error(`The model ${model.modelNumber} was added and cannot be found.`);
  return kept;
}
