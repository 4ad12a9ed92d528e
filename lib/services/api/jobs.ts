import type { z } from "zod";
import { ledgerJudges } from "@/lib/domain/evaluate";
import type { JobSummary } from "@/lib/domain/jobs";
import { COLUMNS } from "@/lib/domain/ledger";
import type { TenantScope } from "@/lib/domain/scope";
import { STAGES } from "@/lib/domain/stages";
import type { Finding } from "@/lib/engineering/findings";
import type { listJobs, listPackets, readFindings, readLedger } from "@/lib/schemas/api";
import { jobListSchema } from "@/lib/schemas/job";
import { listJobs as jobsPage } from "../job-table";
import { jobView } from "../job-view";
import { getJob } from "../jobs";
import { listPackets as packetsOf } from "../packets";

type Answer<E extends { readonly answer: z.ZodType }> = z.input<E["answer"]>;

export async function apiJobs(
  scope: TenantScope,
  { limit, cursor, stage, verdict, search }: z.output<typeof listJobs.query>,
): Promise<Answer<typeof listJobs>> {
  const query = jobListSchema.parse({ stage, verdict, search, after: cursor, sort: "number", way: "down" });
  const { jobs, next } = await jobsPage(scope, query, limit);
  return { jobs: jobs.map(jobAnswer), nextCursor: next === null ? null : String(next) };
}

export async function apiLedger(scope: TenantScope, jobId: string): Promise<Answer<typeof readLedger>> {
  const { job, context, evaluation } = await jobView(scope, jobId);
  const judges = ledgerJudges(context, evaluation.results);
  return {
    job: jobAnswer(job),
    lines: evaluation.ledger.map(({ cells, ...line }) => ({
      ...line,
      cells: Object.fromEntries(COLUMNS.map((column) => [column, cells[column]])) as typeof cells,
      bases: uniqueBases(judges.get(line.key) ?? []),
    })),
  };
}

export async function apiFindings(
  scope: TenantScope,
  jobId: string,
  asked: z.output<typeof readFindings.query>,
): Promise<Answer<typeof readFindings>> {
  const { evaluation } = await jobView(scope, jobId);
  const stages = STAGES.filter((stage) => asked.stage === undefined || stage === asked.stage);
  const all = stages.flatMap((stage) => evaluation.findings[stage].map((one) => ({ ...one, stage })));
  return {
    findings: all
      .filter(({ verdict }) => asked.verdict === undefined || verdict === asked.verdict)
      .map((one) => ({
        ...one,
        figures: one.figures.map((figure) => ({ ...figure, uncertainty: figure.uncertainty ?? null })),
        basis: basisOf(one),
        fields: [...one.inputs],
      })),
  };
}

export async function apiPackets(scope: TenantScope, jobId: string): Promise<Answer<typeof listPackets>> {
  await getJob(scope, jobId);
  return { packets: [...(await packetsOf(scope, jobId))] };
}

function jobAnswer({ currentStage, techs, attention, ...job }: JobSummary) {
  return { ...job, stage: currentStage, techs: techs.map(({ name }) => name), attention: [...attention] };
}

function basisOf({ ruleId, title, basis }: Finding) {
  return { ruleId, title, ...basis };
}

function uniqueBases(findings: readonly Finding[]) {
  return [...new Map(findings.map((one) => [one.ruleId, basisOf(one)])).values()];
}
