import { company } from "@/lib/db/company";
import { judgedJobs } from "@/lib/db/judged-jobs";
import { stageRecords } from "@/lib/db/stage-records";
import { withTenant } from "@/lib/db/with-tenant";
import { evaluateJob } from "@/lib/domain/evaluate";
import { changedFindings, type FindingChange } from "@/lib/domain/finding-changes";
import type { JobId } from "@/lib/domain/ids";
import { changedLimits } from "@/lib/domain/limit-change";
import { limitsInForce } from "@/lib/domain/limits";
import type { TenantScope } from "@/lib/domain/scope";
import type { Verdict } from "@/lib/engineering/findings";
import { invalidInput } from "@/lib/errors";
import type { PreviewLimitInput } from "@/lib/schemas/rules";
import { companyFacts, deriveJob, jobContext } from "./evaluate";
import { getJob } from "./jobs";

/** A person waits for this; what it does not reach is judged in the background after the change. */
const LONGEST_MS = 4_000;
const BATCH = 25;
/** More are counted, not named. */
const NAMED_MOST = 50;

/** A job that would be judged otherwise. */
export type JudgedOtherwise = {
  readonly jobId: JobId;
  readonly number: number;
  readonly customerName: string;
  /** The job's own verdict, which may stay while a check changes. */
  readonly from: Verdict | null;
  readonly to: Verdict | null;
  readonly findings: readonly FindingChange[];
};

export type LimitPreview = {
  /** Jobs looked at, of all that have records. */
  readonly looked: number;
  readonly total: number;
  readonly changed: number;
  /** How many of them would have another verdict as a whole. */
  readonly verdicts: number;
  /** The first of them, by name. */
  readonly changes: readonly JudgedOtherwise[];
};

/** Which jobs a changed limit would judge differently. Nothing is kept. */
export async function previewLimit(
  scope: TenantScope,
  { key, value }: PreviewLimitInput,
): Promise<LimitPreview> {
  const end = Date.now() + LONGEST_MS;
  const overrides = await company(scope).limitOverrides();
  const change = changedLimits(overrides, key, value);
  if (!change.ok) throw invalidInput([change.problem]);
  const facts = await companyFacts(scope);
  const limits = limitsInForce(change.values);
  const total = await judgedJobs(scope).count();
  const changes: JudgedOtherwise[] = [];
  let verdicts = 0;
  let looked = 0;
  let after: JobId | null = null;
  while (Date.now() < end) {
    const ids: readonly JobId[] = await judgedJobs(scope).after(after, BATCH);
    if (ids.length === 0) break;
    for (const id of ids) {
      const found = await withTenant(scope, async () => {
        const job = await getJob(scope, id);
        const records = await stageRecords(scope).latest(id);
        const context = await jobContext(scope, job, records, facts);
        const before = evaluateJob(context);
        const after = evaluateJob({ ...context, limits });
        const from = deriveJob(job, records, before).verdict;
        const to = deriveJob(job, records, after).verdict;
        const findings = changedFindings(before.findings, after.findings);
        return from === to && findings.length === 0
          ? null
          : { jobId: id, number: job.number, customerName: job.customerName, from, to, findings };
      });
      looked += 1;
      if (found) changes.push(found);
      if (found && found.from !== found.to) verdicts += 1;
    }
    after = ids.at(-1) ?? null;
  }
  return { looked, total, changed: changes.length, verdicts, changes: changes.slice(0, NAMED_MOST) };
}
