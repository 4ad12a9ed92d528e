import { createHash } from "node:crypto";
import { attachments } from "@/lib/db/attachments";
import { company } from "@/lib/db/company";
import { fieldContacts } from "@/lib/db/field-contacts";
import { fieldJobs } from "@/lib/db/field-jobs";
import { photoOriginals } from "@/lib/db/photo-originals";
import { questions } from "@/lib/db/questions";
import { stageRecords } from "@/lib/db/stage-records";
import { withTenant } from "@/lib/db/with-tenant";
import type { EquipmentModel } from "@/lib/domain/catalog";
import { ENGINE_VERSION } from "@/lib/domain/evaluate";
import {
  APP_VERSION,
  BUNDLE_VERSION,
  bundleTag,
  bundleTagWith,
  type FieldBundle,
  type FieldJob,
  type FieldRecord,
} from "@/lib/domain/field-bundle";
import type { JobId } from "@/lib/domain/ids";
import type { StageRecord } from "@/lib/domain/jobs";
import { may } from "@/lib/domain/roles";
import type { TenantScope } from "@/lib/domain/scope";
import { STAGES } from "@/lib/domain/stages";
import { type CompanyFacts, companyFacts, jobContext } from "./evaluate";
import { getJob } from "./jobs";
import { memberName } from "./people";

export type BundleAnswer = { readonly etag: string; readonly bundle: FieldBundle | null };

/**
 * All a phone needs for its person's jobs, or only the tag when the phone holds this very state. Asking
 * counts as a contact either way.
 */
export function fieldBundle(scope: TenantScope, knownTag: string | null): Promise<BundleAnswer> {
  return withTenant(scope, async () => {
    const ids = await fieldJobs(scope).ids();
    await fieldContacts(scope).note(ids);
    // The tag before the content: what changes in between is newer than its tag and comes again, never the reverse.
    const etag = await tagOf(scope, ids);
    return { etag, bundle: etag === knownTag?.replace(/^W\//, "") ? null : await readBundle(scope, ids) };
  });
}

/** The tag of the bundle as it stands now, but for the version of one job's startup draft; `null` when the job is not in it. */
export function currentBundleTag(
  scope: TenantScope,
  job: JobId,
): Promise<(version: number) => string | null> {
  return withTenant(scope, async () => {
    const ids = await fieldJobs(scope).ids();
    const tag = await tagOf(scope, ids);
    return (version) => bundleTagWith(tag, ids.indexOf(job), version);
  });
}

async function tagOf(scope: TenantScope, ids: readonly JobId[]): Promise<string> {
  const { rest, versions } = await fieldJobs(scope).fingerprint(ids);
  const all = `${APP_VERSION} ${ENGINE_VERSION} ${BUNDLE_VERSION} ${rest}`;
  return bundleTag(createHash("sha256").update(all).digest("hex").slice(0, 32), versions);
}

async function readBundle(scope: TenantScope, ids: readonly JobId[]): Promise<FieldBundle> {
  const facts = await companyFacts(scope);
  const open = await questions(scope).open(ids);
  const files = await attachments(scope).list(ids);
  const models = new Map<string, EquipmentModel>();
  const jobs: FieldJob[] = [];
  for (const id of ids) {
    const job = await readJob(scope, id, facts, models);
    jobs.push({
      ...job,
      questions: open.filter((one) => one.jobId === id),
      photos: files
        .filter((one) => one.jobId === id && one.kind === "photo")
        .map(({ jobId: _, ...file }) => file),
    });
  }
  const chosen = facts.controls.filter((one) => jobs.some((job) => job.controlId === one.id));
  return {
    bundleVersion: BUNDLE_VERSION,
    appVersion: APP_VERSION,
    engineVersion: ENGINE_VERSION,
    person: {
      userId: scope.userId,
      name: await memberName(scope),
      role: scope.role,
      maySignStartup: may(scope.role, "startup.sign"),
    },
    company: await companyLook(scope),
    limits: facts.limits,
    instruments: facts.instruments,
    models: Object.fromEntries(models),
    controls: Object.fromEntries(chosen.map(({ id, maker, name, data }) => [id, { maker, name, data }])),
    jobs,
    originals: {
      keepOf: await photoOriginals(scope).keptOf(new Date()),
      asked: await photoOriginals(scope).asked(new Date()),
    },
  };
}

async function readJob(
  scope: TenantScope,
  id: JobId,
  facts: CompanyFacts,
  models: Map<string, EquipmentModel>,
): Promise<Omit<FieldJob, "questions" | "photos">> {
  const job = await getJob(scope, id);
  const records = await stageRecords(scope).latest(id);
  const context = await jobContext(scope, job, records, facts);
  if (context.model) models.set(context.model.id, context.model);
  const { addressLine, city, region, postalCode, elevationFt } = job.home;
  const controlId = records.control_setup?.inputs.controlModelId ?? null;
  return {
    id,
    number: job.number,
    title: job.title,
    state: job.state,
    startupDue: job.startupDue,
    note: job.note,
    customer: { name: job.customer.name, phone: job.customer.phone },
    home: { addressLine, city, region, postalCode, elevationFt },
    records: Object.fromEntries(
      STAGES.map((stage) => [stage, toFieldRecord(records[stage])]),
    ) as FieldJob["records"],
    modelId: context.model?.id ?? null,
    controlId: facts.controls.some((one) => one.id === controlId) ? controlId : null,
    weather: context.weather,
    log: context.log,
  };
}

function toFieldRecord(record: StageRecord | null): FieldRecord | null {
  if (!record) return null;
  const { state, revision, version, inputs, updatedAt, updatedByName, signedAt, signatureName } = record;
  return { state, revision, version, inputs, updatedAt, updatedByName, signedAt, signatureName };
}

async function companyLook(scope: TenantScope): Promise<FieldBundle["company"]> {
  const { name, timeZone } = await company(scope).get();
  const brand = await company(scope).brand();
  return {
    tenantId: scope.tenantId,
    name: brand?.displayName ?? name,
    timeZone,
    accent: brand?.accentColor ?? null,
    logoHref: brand?.logo ? `/api/brand/logo?v=${brand.logo.sha256.slice(0, 12)}` : null,
  };
}
