import { airRules } from "@/lib/engineering/air/rules";
import { airflowRules } from "@/lib/engineering/airflow/rules";
import { controlsRules } from "@/lib/engineering/controls/rules";
import { equipmentRules } from "@/lib/engineering/equipment/rules";
import type { Rule } from "@/lib/engineering/findings";
import { moistureRules } from "@/lib/engineering/moisture/rules";
import { refrigerantRules } from "@/lib/engineering/refrigerant/rules";
import { weatherRules } from "@/lib/engineering/weather/rules";

/** The rules of one engineering folder. */
export type RuleChapter = {
  /** The folder below lib/engineering, with which every rule id and limit key in it begins. */
  readonly folder: string;
  readonly title: string;
  readonly rules: readonly Rule[];
};

/** Every rule the product applies, in the order in which a job meets them. */
export const RULE_BOOK: readonly RuleChapter[] = [
  { folder: "air", title: "Moist air", rules: Object.values(airRules) },
  { folder: "weather", title: "Weather and design conditions", rules: Object.values(weatherRules) },
  { folder: "equipment", title: "Equipment and capacity", rules: Object.values(equipmentRules) },
  { folder: "airflow", title: "Airflow and static pressure", rules: Object.values(airflowRules) },
  { folder: "controls", title: "Control settings", rules: Object.values(controlsRules) },
  { folder: "refrigerant", title: "Refrigerant and charge", rules: Object.values(refrigerantRules) },
  { folder: "moisture", title: "Moisture", rules: Object.values(moistureRules) },
];

/** The folder a rule's id or a limit's key begins with. */
export function chapterFolderOf(idOrKey: string): string {
  return idOrKey.slice(0, idOrKey.indexOf("."));
}
