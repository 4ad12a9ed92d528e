/** The six steps of a job, in the order of the chain. */
export const STAGES = [
  "load_summary",
  "equipment_selection",
  "airflow_setup",
  "control_setup",
  "startup_record",
  "humidity_review",
] as const;
export type StageKey = (typeof STAGES)[number];

export const STAGE_NAMES: Readonly<Record<StageKey, string>> = {
  load_summary: "Load summary",
  equipment_selection: "Equipment selection",
  airflow_setup: "Airflow setup",
  control_setup: "Control setup",
  startup_record: "Startup record",
  humidity_review: "Humidity review",
};

/** The part of an address that names a stage. */
export const STAGE_SLUGS: Readonly<Record<StageKey, string>> = {
  load_summary: "load-summary",
  equipment_selection: "equipment-selection",
  airflow_setup: "airflow-setup",
  control_setup: "control-setup",
  startup_record: "startup-record",
  humidity_review: "humidity-review",
};

/** The stage a slug names, or `null`. */
export function stageOfSlug(slug: string): StageKey | null {
  return STAGES.find((stage) => STAGE_SLUGS[stage] === slug) ?? null;
}
