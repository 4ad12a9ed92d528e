import type { Client } from "pg";
import { afterAll, beforeAll, beforeEach, expect, test } from "vitest";
import { closeDatabase } from "@/lib/db/client";
import { packets } from "@/lib/db/packets";
import type { JobId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { sha256Of } from "@/lib/files/store";
import { makePacket, readPacket } from "@/lib/services/packets";
import { rowsOfCompany } from "../support/company-rows";
import { connect } from "../support/connect";
import { type Crew, given, makeCrew } from "../support/people";
import { LOAD, openJob, refusedBy, save } from "../support/service-jobs";

const makeHomeownerPacket = (scope: TenantScope, jobId: string, now?: Date) =>
  makePacket(scope, { jobId, kind: "homeowner", language: "en", paper: "letter" }, now);

let client: Client;
let crew: Crew;
let job: JobId;

beforeAll(async () => {
  client = await connect();
  crew = await makeCrew();
});
beforeEach(async () => {
  job = await openJob(crew.office);
  await save(crew.office, job, "load_summary", LOAD);
});
afterAll(async () => {
  await client.end();
  await closeDatabase();
});

test("unchanged records give the packet that exists, also the next day; the kept bytes are those of the hash", async () => {
  const id = await makeHomeownerPacket(crew.office, job);
  const before = await rowsOfCompany(client, crew.owner);
  const tomorrow = new Date(Date.now() + 86_400_000);
  expect(await makeHomeownerPacket(crew.owner, job, tomorrow)).toBe(id);
  expect(await rowsOfCompany(client, crew.owner)).toEqual(before);
  const { bytes, fileName } = await readPacket(crew.office, job, id);
  const [kept] = await packets(crew.office).list(job);
  expect(sha256Of(bytes)).toBe(given(kept).sha256);
  expect(bytes.byteLength).toBe(given(kept).sizeBytes);
  expect(Buffer.from(bytes.subarray(0, 5)).toString()).toBe("%PDF-");
  expect(fileName).toMatch(/^job-\d+-homeowner-1\.pdf$/);
  expect(given(kept).pages).toBeGreaterThan(0);
});

test("a change gives the next packet and leaves the first as it was", async () => {
  const first = await makeHomeownerPacket(crew.office, job);
  const asMade = await readPacket(crew.office, job, first);
  await save(crew.office, job, "load_summary", { ...LOAD, sensibleCoolingBtuh: 25_000 }, 1);
  const second = await makeHomeownerPacket(crew.office, job);
  expect(second).not.toBe(first);
  const revisions = (await packets(crew.office).list(job)).map((one) => one.revision);
  expect(revisions.toSorted()).toEqual([1, 2]);
  expect((await readPacket(crew.office, job, first)).bytes).toEqual(asMade.bytes);
  // Back to what it was: the second has replaced the first, so a third replaces the second.
  await save(crew.office, job, "load_summary", LOAD, 2);
  expect([first, second]).not.toContain(await makeHomeownerPacket(crew.office, job));
});

test("two people making the packet at the same moment get the same one", async () => {
  const [one, other] = await Promise.all([
    makeHomeownerPacket(crew.office, job),
    makeHomeownerPacket(crew.owner, job),
  ]);
  expect(one).toBe(other);
  expect(await packets(crew.office).list(job)).toHaveLength(1);
});

test("a packet that does not exist, or belongs to another job, is nothing", async () => {
  const other = await makeHomeownerPacket(crew.office, await openJob(crew.office));
  for (const id of [other, crypto.randomUUID(), "no id"]) {
    expect((await refusedBy(readPacket(crew.office, job, id))).code).toBe("NOT_FOUND");
  }
});
