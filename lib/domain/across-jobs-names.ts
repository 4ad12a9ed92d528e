import { Info } from "luxon";
import type { ComparedBy } from "./across-jobs";

const SEASONS = [
  "Winter (December to February)",
  "Spring (March to May)",
  "Summer (June to August)",
  "Autumn (September to November)",
] as const;
const MONTHS = Info.months("long", { locale: "en-US" });
const STEP_CFM_PER_TON = 25;

/** A compared value in words. Ids are looked up among `names`; an unknown one is shown as it is. */
export function valueInWords(
  by: ComparedBy,
  value: string | null,
  names: ReadonlyMap<string, string>,
): string {
  if (value === null || value === "") return "not recorded";
  switch (by) {
    case "firstStageCfmPerTon":
    case "secondStageCfmPerTon":
      return `${value} to ${Number(value) + STEP_CFM_PER_TON}`;
    case "externalStaticInWc":
      return `${(Number(value) / 10).toFixed(1)} to ${((Number(value) + 1) / 10).toFixed(1)}`;
    case "stepBackToFirstStage":
      return value === "true" ? "yes" : "no";
    case "season":
      return SEASONS[Number(value)] ?? value;
    case "startupMonth":
      return MONTHS[Number(value) - 1] ?? value;
    default:
      return names.get(value) ?? value;
  }
}
