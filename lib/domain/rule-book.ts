import { airRules } from "@/lib/engineering/air/rules";
import { airflowRules } from "@/lib/engineering/airflow/rules";
import { controlsRules } from "@/lib/engineering/controls/rules";
import { equipmentRules } from "@/lib/engineering/equipment/rules";
import type { Rule } from "@/lib/engineering/findings";
import { loadRules } from "@/lib/engineering/load/rules";
import { logsRules } from "@/lib/engineering/logs/rules";
import { moistureRules } from "@/lib/engineering/moisture/rules";
import { refrigerantRules } from "@/lib/engineering/refrigerant/rules";
import { simulationRules } from "@/lib/engineering/simulation/rules";
import { startupRules } from "@/lib/engineering/startup/rules";
import { weatherRules } from "@/lib/engineering/weather/rules";
import { forecastRules } from "./evaluate/forecast";
import { jobRules } from "./evaluate/guard";
import { reviewRules } from "./evaluate/review";

/** Rules that belong together: those of one engineering folder, or those that need a whole job. */
export type RuleChapter = {
  /** What every rule id and limit key in it begins with; the folder's name below lib/engineering where there is one. */
  readonly folder: string;
  readonly title: string;
  readonly rules: readonly Rule[];
};

/** Every rule the product applies, in the order in which a job meets them. */
export const RULE_BOOK: readonly RuleChapter[] = [
  { folder: "air", title: "Moist air", rules: Object.values(airRules) },
  { folder: "weather", title: "Weather and design conditions", rules: Object.values(weatherRules) },
  { folder: "load", title: "Load summary", rules: Object.values(loadRules) },
  { folder: "equipment", title: "Equipment and capacity", rules: Object.values(equipmentRules) },
  { folder: "airflow", title: "Airflow and static pressure", rules: Object.values(airflowRules) },
  { folder: "controls", title: "Control settings", rules: Object.values(controlsRules) },
  { folder: "startup", title: "Startup record", rules: Object.values(startupRules) },
  { folder: "refrigerant", title: "Refrigerant and charge", rules: Object.values(refrigerantRules) },
  { folder: "moisture", title: "Moisture", rules: Object.values(moistureRules) },
  { folder: "simulation", title: "A year of the house", rules: Object.values(simulationRules) },
  { folder: "logs", title: "Logs of the house", rules: Object.values(logsRules) },
  { folder: "forecast", title: "Forecast of the design", rules: Object.values(forecastRules) },
  { folder: "review", title: "Humidity review", rules: Object.values(reviewRules) },
  { folder: "job", title: "A job as a whole", rules: Object.values(jobRules) },
];

/** What a rule's id or a limit's key begins with. */
export function chapterFolderOf(idOrKey: string): string {
  return idOrKey.slice(0, idOrKey.indexOf("."));
}
