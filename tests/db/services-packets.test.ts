import type { Client } from "pg";
import { afterAll, beforeAll, beforeEach, expect, test, vi } from "vitest";
import { closeDatabase } from "@/lib/db/client";
import { packets } from "@/lib/db/packets";
import type { JobId } from "@/lib/domain/ids";
import type { NewPacket, Packet } from "@/lib/domain/packets";
import type { TenantScope } from "@/lib/domain/scope";
import { sha256Of } from "@/lib/files/store";
import { renderView } from "@/lib/reports/render-view";
import { removeLogo, saveLogo } from "@/lib/services/brand";
import { checkPacket, readReplacedPacket } from "@/lib/services/check-packet";
import { keepView, readView } from "@/lib/services/kept-view";
import { makePacket, readPacket } from "@/lib/services/packets";
import { TIDEWILLOW_LOGO } from "@/seed/logos";
import { readPdf } from "../reports/read-pdf";
import { rowsOfCompany } from "../support/company-rows";
import { connect } from "../support/connect";
import { type Crew, given, makeCrew } from "../support/people";
import { LOAD, openJob, refusedBy, save } from "../support/service-jobs";

const makeHomeownerPacket = (scope: TenantScope, jobId: string, now?: Date) =>
  makePacket(scope, { jobId, kind: "homeowner", language: "en", paper: "letter" }, now);

// Each prints several packets.
vi.setConfig({ testTimeout: 120_000 });

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

test.each(["homeowner", "crew", "file", "review"] as const)(
  "a %s packet is printed again from what was kept, byte for byte, after records and brand have changed",
  async (kind) => {
    await saveLogo(crew.owner, new TextEncoder().encode(TIDEWILLOW_LOGO));
    const wanted = { jobId: job, kind, language: "en", paper: "a4" } as const;
    const first = await makePacket(crew.office, wanted);
    await save(crew.office, job, "load_summary", { ...LOAD, sensibleCoolingBtuh: 25_000 }, 1);
    await removeLogo(crew.owner);
    const found = await checkPacket(crew.office, { jobId: job, packetId: first });
    expect(found).toEqual({ sameBytes: true, says: [expect.stringMatching(/the same \d+ bytes/)] });
    // The records as they stand now would print something else: what was kept is what was printed.
    const second = await makePacket(crew.office, wanted);
    const bytes = async (id: string) => sha256Of((await readPacket(crew.office, job, id)).bytes);
    expect(await bytes(second)).not.toBe(await bytes(first));
    expect((await checkPacket(crew.office, { jobId: job, packetId: second })).sameBytes).toBe(true);
  },
);

test("a packet that prints otherwise than it did says what differs", async () => {
  const id = await makeHomeownerPacket(crew.office, job);
  const kept = given((await packets(crew.office).list(job))[0]);
  const view = await readView(crew.office.tenantId, kept.viewSha256);
  const other = { ...view, createdOn: "2020-01-01" };
  // As if an older renderer had made the file: the same contents, other bytes.
  const packetId = await packets(crew.office).add({
    ...newOf(kept),
    revision: 7,
    viewSha256: await keepView(crew.office.tenantId, other),
    renderer: "0, an older one",
  });
  const found = await checkPacket(crew.office, { jobId: job, packetId });
  expect(found.sameBytes).toBe(false);
  expect(found.says[0]).toMatch(/^It was made by renderer 0, an older one; this is \d+, zlib /);
  expect(sha256Of(await renderView(view))).toBe(kept.sha256);
  expect((await checkPacket(crew.office, { jobId: job, packetId: id })).sameBytes).toBe(true);
});

test("a packet of before contents were kept says so, and is still handed out", async () => {
  await makeHomeownerPacket(crew.office, job);
  const kept = given((await packets(crew.office).list(job))[0]);
  const old = { ...newOf(kept), revision: 7, viewSha256: "", renderer: "" };
  const packetId = await packets(crew.office).add(old);
  const refusal = await refusedBy(checkPacket(crew.office, { jobId: job, packetId }));
  expect(refusal.message).toContain("made before its contents were kept");
  expect(sha256Of((await readPacket(crew.office, job, packetId)).bytes)).toBe(kept.sha256);
});

test("a replaced packet is printed with words on every page that say so; the newest is not", async () => {
  const first = await makePacket(crew.office, { jobId: job, kind: "homeowner", language: "es", paper: "a4" });
  const newest = await refusedBy(readReplacedPacket(crew.office, { jobId: job, packetId: first }));
  expect(newest.message).toContain("No newer packet has replaced this one");
  await save(crew.office, job, "load_summary", { ...LOAD, sensibleCoolingBtuh: 25_000 }, 1);
  await makePacket(crew.office, { jobId: job, kind: "homeowner", language: "es", paper: "a4" });
  const { bytes, fileName } = await readReplacedPacket(crew.office, { jobId: job, packetId: first });
  const pages = await readPdf(bytes);
  for (const page of pages.pages) expect(page.text).toMatch(/Reemplazado por el 2 del \d{4}-\d\d-\d\d/);
  expect(fileName).toMatch(/-homeowner-1-es-replaced\.pdf$/);
});

/** A kept packet as it would be added once more. */
function newOf({ id, createdAt, createdByName, ...rest }: Packet): NewPacket {
  return { ...rest, jobId: job, engineVersion: "1" };
}
