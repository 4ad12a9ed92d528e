import { company } from "@/lib/db/company";
import { judgedJobs } from "@/lib/db/judged-jobs";
import { stageRecords } from "@/lib/db/stage-records";
import { withTenant } from "@/lib/db/with-tenant";
import { evaluateJob } from "@/lib/domain/evaluate";
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

export type VerdictChange = {
  readonly jobId: JobId;
  readonly number: number;
  readonly customerName: string;
  readonly from: Verdict | null;
  readonly to: Verdict | null;
};

export type LimitPreview = {
  /** Jobs looked at, of all that have records. */
  readonly looked: number;
  readonly total: number;
  readonly changed: number;
  /** The first of them, by name. */
  readonly changes: readonly VerdictChange[];
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
  const changes: VerdictChange[] = [];
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
        const from = deriveJob(job, records, evaluateJob(context)).verdict;
        const to = deriveJob(job, records, evaluateJob({ ...context, limits })).verdict;
        return from === to
          ? null
          : { jobId: id, number: job.number, customerName: job.customerName, from, to };
      });
      looked += 1;
      if (found) changes.push(found);
    }
    after = ids.at(-1) ?? null;
  }
  return { looked, total, changed: changes.length, changes: changes.slice(0, NAMED_MOST) };
}
