import { defineFields, type InputsOf, number, reference, text } from "../fields";

const SYSTEM = "System";
const REVIEW = "Selection";

/** Which equipment, set to which capacity. Version 1. */
export const equipmentSelectionFields = defineFields({
  equipmentModelId: reference({ label: "Equipment", group: SYSTEM, to: "equipment", neededToSign: true }),
  capacitySetting: reference({
    label: "Capacity setting",
    group: SYSTEM,
    to: "capacity setting",
    neededToSign: true,
    help: "What the outdoor unit is set to give, not its nameplate.",
  }),
  auxiliaryHeatKw: number({
    label: "Auxiliary heat installed",
    unit: "kW",
    min: 0,
    max: 40,
    decimals: 1,
    group: SYSTEM,
  }),
  dehumidifierPintsPerDay: number({
    label: "Supplemental dehumidifier",
    unit: "pints/day",
    min: 0,
    max: 250,
    decimals: 0,
    group: SYSTEM,
    help: "At its rating condition; 0 when there is none.",
  }),
  dehumidifierAtHousePintsPerDay: number({
    label: "Its capacity at the indoor design air",
    unit: "pints/day",
    min: 0,
    max: 250,
    decimals: 0,
    group: SYSTEM,
    help: "From the maker's data: less than the rating, because the house is drier than the rating condition.",
  }),
  reason: text({ label: "Why this one", group: REVIEW, maxLength: 1_000 }),
  deviations: text({ label: "Reasons for departing from a limit", group: "Departures", maxLength: 4_000 }),
});

export type EquipmentSelectionInputs = InputsOf<typeof equipmentSelectionFields>;
