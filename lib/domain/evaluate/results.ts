import type { Finding, Verdict } from "@/lib/engineering/findings";
import type { SanityQuestion } from "@/lib/engineering/startup";
import type { JobFacts } from "../facts";
import type { LedgerLine } from "../ledger";
import type { StageKey } from "../stages/keys";
import type { AirflowAsSet } from "./airflow-as-set";
import type { CapacityMap } from "./capacity-map";
import type { Derived } from "./context";
import type { EquipmentResults } from "./equipment";
import type { StartupResults } from "./startup";

/** Everything computed for a job before it is laid out as a ledger. */
export type JobResults = {
  readonly airflow: AirflowAsSet;
  readonly designCfm: Derived<number>;
  readonly equipment: EquipmentResults;
  readonly startup: StartupResults;
  readonly cfmPerTon: { readonly set: number | null; readonly measured: number | null };
  /** Of the cooling minutes on the hot design afternoon, %. */
  readonly secondStageSharePct: number | null;
  /** Lowest indoor humidity the system as set can hold at design, %. */
  readonly lowestRhPct: number | null;
  /** Every airflow setting with every capacity setting, against the load; not known until what it needs is given. */
  readonly capacityMap: Derived<CapacityMap>;
  readonly findings: Readonly<Record<StageKey, readonly Finding[]>>;
};

/** What follows from a job's records. */
export type Evaluation = {
  readonly results: JobResults;
  readonly findings: Readonly<Record<StageKey, readonly Finding[]>>;
  readonly questions: readonly SanityQuestion[];
  readonly verdicts: Readonly<Record<StageKey, Verdict | null>>;
  readonly ledger: readonly LedgerLine[];
  readonly facts: JobFacts;
  readonly engineVersion: string;
};
