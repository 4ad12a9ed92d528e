import { heatingFindings as findingsOfLines } from "@/lib/engineering/equipment";
import type { Finding } from "@/lib/engineering/findings";
import type { EquipmentModel } from "../catalog";
import { equipmentSelectionFields } from "../stages/equipment-selection";
import type { JobContext } from "./context";
import { byTable, withFields } from "./field-names";

/** Outdoor temperatures of the two rated heating points, °F. */
const RATED_F = [17, 47] as const;

/** Balance point and auxiliary heat; nothing for equipment that only cools or a house without a heating load. */
export function heatingFindings(context: JobContext): readonly Finding[] {
  const { load_summary: load, equipment_selection: selection } = context.inputs;
  const { model } = context;
  const [at17 = null, at47 = null] = RATED_F.map((outdoorF) =>
    heatingAt(model, selection.capacitySetting, outdoorF),
  );
  if (load.heatingBtuh === 0 || (model && !model.performance.some((row) => row.mode === "heating")))
    return [];
  const found = findingsOfLines(
    {
      capacityAt17FBtuh: at17,
      capacityAt47FBtuh: at47,
      designLoadBtuh: load.heatingBtuh,
      designF: load.outdoorHeatingDbF,
      zeroLoadF: load.indoorHeatingDbF,
    },
    selection.auxiliaryHeatKw,
  );
  return withFields(found, byTable(FIELDS, equipmentSelectionFields));
}

const FIELDS: Readonly<Record<string, string | null>> = {
  capacityAt17FBtuh: "equipmentModelId",
  capacityAt47FBtuh: "equipmentModelId",
  installedAuxiliaryKw: "auxiliaryHeatKw",
};

/** Maker's heating capacity of a capacity setting at an outdoor temperature the table lists, Btu/h. */
export function heatingAt(
  model: EquipmentModel | null,
  capacitySetting: string | null,
  outdoorF: number,
): number | null {
  const row = model?.performance.find(
    (one) => one.mode === "heating" && one.capacitySetting === capacitySetting && one.outdoorDbF === outdoorF,
  );
  return row?.totalBtuh ?? null;
}
