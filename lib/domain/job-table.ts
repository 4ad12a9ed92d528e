/** The columns of the jobs table, each with the key the database sorts it by. */
export const JOB_COLUMNS = {
  number: { label: "Job", sort: "number", descendingFirst: true },
  customer: { label: "Customer", sort: "customer_sort", descendingFirst: false },
  stage: { label: "Waits for", sort: "stage_sort", descendingFirst: false },
  verdict: { label: "Verdict", sort: "verdict_sort", descendingFirst: false },
  attention: { label: "Needs attention", sort: "needs_attention", descendingFirst: true },
  tech: { label: "Tech", sort: "tech_sort", descendingFirst: false },
  startup: { label: "Startup", sort: "startup_sort", descendingFirst: false },
  review: { label: "Humidity review", sort: "review_sort", descendingFirst: false },
} as const;

export type JobColumn = keyof typeof JOB_COLUMNS;
export const JOB_COLUMN_KEYS = Object.keys(JOB_COLUMNS) as readonly JobColumn[];

/** Shown when nobody has chosen; the number is always shown. */
export const FIRST_COLUMNS: readonly JobColumn[] = [
  "number",
  "customer",
  "stage",
  "verdict",
  "attention",
  "tech",
  "startup",
];

export const DUE_CHOICES = {
  overdue: "overdue",
  "7": "within 7 days",
  "30": "within 30 days",
} as const;
export type DueChoice = keyof typeof DUE_CHOICES;
