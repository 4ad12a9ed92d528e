import { defineFields, number } from "../fields";

/** Headings of the three loads by component; a form folds them away while they are empty. */
export const LOAD_PART_GROUPS = [
  "Sensible cooling load by component",
  "Latent cooling load by component",
  "Heating load by component",
] as const;
const [SENSIBLE, LATENT, HEATING] = LOAD_PART_GROUPS;

const part = (label: string, group: string) =>
  number({ label, unit: "Btu/h", min: 0, max: 300_000, decimals: 0, group });

/** What the designer's report splits the loads into, where it does. Summed by `LOAD_PARTS` of the engineering. */
export const loadPartFields = defineFields({
  sensibleWindowsBtuh: part("Windows and glass doors, sensible", SENSIBLE),
  sensibleWallsBtuh: part("Walls and doors, sensible", SENSIBLE),
  sensibleCeilingsBtuh: part("Ceilings and roof, sensible", SENSIBLE),
  sensibleFloorsBtuh: part("Floors, sensible", SENSIBLE),
  sensibleInfiltrationBtuh: part("Infiltration, sensible", SENSIBLE),
  sensibleVentilationBtuh: part("Ventilation, sensible", SENSIBLE),
  sensibleDuctsBtuh: part("Ducts, sensible", SENSIBLE),
  sensiblePeopleBtuh: part("People, sensible", SENSIBLE),
  sensibleAppliancesBtuh: part("Appliances and lights, sensible", SENSIBLE),
  sensibleOtherBtuh: part("Other, sensible", SENSIBLE),
  latentInfiltrationBtuh: part("Infiltration, latent", LATENT),
  latentVentilationBtuh: part("Ventilation, latent", LATENT),
  latentDuctsBtuh: part("Ducts, latent", LATENT),
  latentPeopleBtuh: part("People, latent", LATENT),
  latentOtherBtuh: part("Other, latent", LATENT),
  heatingWindowsBtuh: part("Windows and glass doors, heating", HEATING),
  heatingWallsBtuh: part("Walls and doors, heating", HEATING),
  heatingCeilingsBtuh: part("Ceilings and roof, heating", HEATING),
  heatingFloorsBtuh: part("Floors, heating", HEATING),
  heatingInfiltrationBtuh: part("Infiltration, heating", HEATING),
  heatingVentilationBtuh: part("Ventilation, heating", HEATING),
  heatingDuctsBtuh: part("Ducts, heating", HEATING),
  heatingOtherBtuh: part("Other, heating", HEATING),
});
