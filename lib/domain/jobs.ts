import type { Finding, Verdict } from "@/lib/engineering/findings";
import type { CustomerId, HomeId, JobId, StageRecordId, UserId } from "./ids";
import type { StageInputs, StageKey } from "./stages";

export type JobState = "open" | "closed" | "cancelled";

export type AssignedTech = { readonly userId: UserId; readonly name: string };

/** A job as a list shows it. Dates are ISO days. */
export type JobSummary = {
  readonly id: JobId;
  readonly number: number;
  /** Raised by every change of the plan: a change must name the one it started from. */
  readonly version: number;
  readonly title: string;
  readonly state: JobState;
  /** The stage that waits for work; `null` when all are signed. */
  readonly currentStage: StageKey | null;
  readonly verdict: Verdict | null;
  /** Reasons why the job needs attention, in words. */
  readonly attention: readonly string[];
  readonly startupDue: string | null;
  readonly reviewDue: string | null;
  readonly customerName: string;
  readonly place: string;
  readonly techs: readonly AssignedTech[];
};

export type Home = {
  readonly id: HomeId;
  readonly addressLine: string;
  readonly city: string;
  readonly region: string;
  readonly postalCode: string;
  readonly elevationFt: number | null;
  readonly builder: string;
  /** North and east positive, °; `null` while nobody has said. */
  readonly latitude: number | null;
  readonly longitude: number | null;
};

export type Customer = {
  readonly id: CustomerId;
  readonly name: string;
  readonly email: string;
  readonly phone: string;
};

export type Job = JobSummary & {
  readonly customer: Customer;
  readonly home: Home;
  readonly weatherFileId: string | null;
  readonly note: string;
  readonly createdAt: string;
};

export type RecordState = "draft" | "signed" | "superseded";

/** One revision of one stage record. */
export type StageRecord<S extends StageKey = StageKey> = {
  readonly id: StageRecordId;
  readonly jobId: JobId;
  readonly stage: S;
  readonly revision: number;
  readonly state: RecordState;
  /** Raised by every save: a save must name the one it started from. */
  readonly version: number;
  readonly inputs: StageInputs[S];
  readonly findings: readonly Finding[];
  readonly verdict: Verdict | null;
  readonly engineVersion: string;
  readonly signedAt: string | null;
  readonly signatureName: string | null;
  readonly reopenReason: string | null;
  readonly updatedAt: string;
  readonly updatedByName: string;
};

/** The latest revision of each stage of a job: a draft if there is one, otherwise the signed one. */
export type JobRecords = { readonly [S in StageKey]: StageRecord<S> | null };

const ORDER: readonly Verdict[] = ["falls short", "can't tell", "not measured", "meets"];

/** The worst verdict of the binding findings, or `null` when none of them carries a verdict. */
export function worstVerdict(findings: readonly Pick<Finding, "verdict" | "binding">[]): Verdict | null {
  const said = findings.filter((finding) => finding.binding).map((finding) => finding.verdict);
  return ORDER.find((verdict) => said.includes(verdict)) ?? null;
}
