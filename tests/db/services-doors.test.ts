import type { Client } from "pg";
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { createJob, saveDesign, scheduleJob } from "@/app/(office)/jobs/actions";
import { POST as importLog } from "@/app/api/jobs/[jobId]/logs/route";
import { closeDatabase } from "@/lib/db/client";
import type { TenantScope } from "@/lib/domain/scope";
import { jobListSchema } from "@/lib/schemas/job";
import { listJobs } from "@/lib/services/job-table";
import { rowsOfCompany } from "../support/company-rows";
import { connect } from "../support/connect";
import { type Crew, makeCrew } from "../support/people";
import { openJob } from "../support/service-jobs";

const asked = vi.hoisted(() => ({ scope: null as TenantScope | null }));
vi.mock("@/lib/auth/session", () => ({ currentScope: async () => asked.scope }));
vi.mock("next/headers", () => ({ headers: async () => new Headers() }));
vi.mock("next/cache", () => ({ revalidatePath: () => undefined }));

let client: Client;
let crew: Crew;
let jobId: string;

beforeAll(async () => {
  client = await connect();
  crew = await makeCrew();
  asked.scope = crew.owner;
  jobId = await openJob(crew.office);
});
afterAll(async () => {
  await client.end();
  await closeDatabase();
});

const NEW_JOB = {
  customerName: "Bo Reed",
  addressLine: "1 Oak Way",
  city: "Bay",
  region: "TX",
  postalCode: "77000",
  elevationFt: 10,
};
const stage = (inputs: unknown, expectedVersion: unknown = null) =>
  saveDesign({ jobId, stage: "load_summary", expectedVersion, inputs });
const schedule = (change: object) =>
  scheduleJob({ jobId, expectedVersion: 1, startupDue: null, reviewDue: null, techIds: [], ...change });

test.each([
  ["a name with a NUL character", () => createJob({ ...NEW_JOB, customerName: "Bo\0Reed" }), "customerName"],
  ["half of a surrogate pair in the notes", () => stage({ notes: "\ud83c" }), "notes"],
  ["an unknown member", () => createJob({ ...NEW_JOB, owner: true }), "owner"],
  ["an elevation above every roof", () => createJob({ ...NEW_JOB, elevationFt: "40000 ft" }), "elevationFt"],
  ["an e-mail that is none", () => createJob({ ...NEW_JOB, customerEmail: "nobody" }), "customerEmail"],
  ["a version no database has", () => stage({}, 3_000_000_000), "expectedVersion"],
  ["a date that is none", () => schedule({ startupDue: "2026-02-30" }), "startupDue"],
  ["eleven people", () => schedule({ techIds: Array(11).fill(jobId) }), "techIds"],
  [
    "a stage that is none",
    () => saveDesign({ jobId, stage: "tenant", expectedVersion: null, inputs: {} }),
    "stage",
  ],
  ["inputs that are a list", () => stage([1]), "inputs"],
  ["no input at all", () => createJob(undefined), ""],
])("%s is refused by the name of its field, and nothing is saved", async (_, attempt, field) => {
  const before = await rowsOfCompany(client, crew.owner);
  const answer = await attempt();
  expect(answer).toMatchObject({ ok: false, code: "INVALID_INPUT" });
  expect(answer.ok ? [] : answer.fields.map((one) => one.field)).toEqual([field]);
  expect(await rowsOfCompany(client, crew.owner)).toEqual(before);
});

test.each([
  ["no name for the logger", { sourceName: " " }, "sourceName"],
  ["a name with a NUL character", { sourceName: "a\0" }, "sourceName"],
  ["a mapping that is no JSON", { mapping: "{" }, "mapping"],
  ["a mapping of another shape", { mapping: '{"columns":[]}' }, "mapping"],
])("a log with %s is refused by the name of its field", async (_, fields, field) => {
  const form = new FormData();
  const all = { sourceName: "Hall sensor", ...fields };
  for (const [name, value] of Object.entries(all)) form.set(name, value);
  form.set("file", new File(["time,rh\n"], "log.csv"));
  const request = new Request("http://localhost/", { method: "POST", body: form });
  const response = await importLog(request, { params: Promise.resolve({ jobId }) });
  expect(response.status).toBe(422);
  expect(await response.json()).toMatchObject({ code: "INVALID_INPUT", fields: [{ field }] });
});

test.each([
  { search: "a\0b" },
  { after: "99999999999" },
  { after: "-1" },
  { after: "1.5" },
  { sort: "password" },
  { way: "sideways" },
  { columns: "none,of,these" },
  { due: "never" },
  { tech: "no id" },
  { stage: "tenant" },
  { search: ["a", "b"] },
])("an address of the jobs table with %o shows the table", async (query) => {
  const { jobs } = await listJobs(crew.owner, jobListSchema.parse(query));
  expect(jobs.map((one) => one.id)).toContain(jobId);
});
