import type { StageKey } from "@/lib/domain/stages";
import * as actions from "./actions";

/** Which action saves a stage record: each checks its own permission. */
export const SAVE: Readonly<Record<StageKey, typeof actions.saveDesign>> = {
  load_summary: actions.saveDesign,
  equipment_selection: actions.saveDesign,
  airflow_setup: actions.saveDesign,
  control_setup: actions.saveDesign,
  startup_record: actions.saveStartup,
  humidity_review: actions.saveReview,
};

/** Which action signs it. */
export const SIGN: Readonly<Record<StageKey, typeof actions.signDesign>> = {
  load_summary: actions.signDesign,
  equipment_selection: actions.signDesign,
  airflow_setup: actions.signDesign,
  control_setup: actions.signDesign,
  startup_record: actions.signStartup,
  humidity_review: actions.signReview,
};
