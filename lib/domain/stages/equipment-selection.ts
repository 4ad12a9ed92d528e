import { defineFields, type InputsOf, number, reference, text } from "../fields";

const SYSTEM = "System";
const REVIEW = "Selection";
const TERMS = "Warranty and maintenance";

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
  partsWarrantyYears: number({
    label: "Parts warranty",
    unit: "years",
    min: 0,
    max: 50,
    decimals: 0,
    group: TERMS,
    help: "Of this job, from the signed startup on. Left empty, the company's standard terms hold; 0: none.",
  }),
  laborWarrantyYears: number({
    label: "Labor warranty",
    unit: "years",
    min: 0,
    max: 50,
    decimals: 0,
    group: TERMS,
  }),
  maintenanceMonths: number({
    label: "Maintenance every",
    unit: "months",
    min: 0,
    max: 60,
    decimals: 0,
    group: TERMS,
  }),
  warrantyWords: text({
    label: "What the warranty covers here",
    group: TERMS,
    maxLength: 1_000,
    help: "Printed in the homeowner packet as it stands, after the company's own words.",
  }),
  reason: text({ label: "Why this one", group: REVIEW, maxLength: 1_000 }),
  deviations: text({ label: "Reasons for departing from a limit", group: "Departures", maxLength: 4_000 }),
});

export type EquipmentSelectionInputs = InputsOf<typeof equipmentSelectionFields>;
