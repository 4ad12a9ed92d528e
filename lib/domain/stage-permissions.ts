import type { Permission } from "./roles";
import { STAGES, type StageKey } from "./stages/keys";

/** What it takes to fill in a stage record. */
export const EDIT_PERMISSION: Readonly<Record<StageKey, Permission>> = {
  load_summary: "design.edit",
  equipment_selection: "design.edit",
  airflow_setup: "design.edit",
  control_setup: "design.edit",
  startup_record: "startup.fill",
  humidity_review: "review.edit",
};

/** What it takes to sign one. */
export const SIGN_PERMISSION: Readonly<Record<StageKey, Permission>> = {
  load_summary: "design.sign",
  equipment_selection: "design.sign",
  airflow_setup: "design.sign",
  control_setup: "design.sign",
  startup_record: "startup.sign",
  humidity_review: "review.sign",
};

/** The stages a permission covers, by one of the tables above. */
export function stagesWith(
  table: Readonly<Record<StageKey, Permission>>,
  permission: Permission,
): readonly StageKey[] {
  return STAGES.filter((stage) => table[stage] === permission);
}
