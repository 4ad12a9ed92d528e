import { randomUUID } from "node:crypto";
import { afterAll, beforeEach, expect, test, vi } from "vitest";
import * as bundleRoute from "@/app/api/field/bundle/route";
import * as photoRoute from "@/app/api/field/hand-over/[jobId]/photos/[photoId]/route";
import * as handOverRoute from "@/app/api/field/hand-over/route";
import * as syncRoute from "@/app/api/jobs/[jobId]/startup/route";
import { activity } from "@/lib/db/activity";
import { closeDatabase } from "@/lib/db/client";
import { fieldContacts } from "@/lib/db/field-contacts";
import { members } from "@/lib/db/members";
import { stageRecords } from "@/lib/db/stage-records";
import { unscopedPerson } from "@/lib/db/unscoped/people";
import { unscopedTransaction } from "@/lib/db/unscoped/transaction";
import { withTenant } from "@/lib/db/with-tenant";
import type { JobId, UserId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { COMPANY_HEADER, PERSON_HEADER } from "@/lib/domain/shown-for";
import { sha256Of } from "@/lib/files/store";
import { listFiles } from "@/lib/services/attachments";
import { getJob } from "@/lib/services/jobs";
import { decideLatePhoto, decideLateValue, lateReadings } from "@/lib/services/late-readings";
import { scheduleJob } from "@/lib/services/plan-job";
import { type Crew, given, makeCrew } from "../support/people";
import { PHOTO } from "../support/photo";
import { openJob, refusedBy, STARTUP, save, sign } from "../support/service-jobs";

/** Who the session cookie names; read from the database as in the application. */
const asked = vi.hoisted(() => ({ userId: null as string | null }));
vi.mock("@/lib/auth/session", async () => {
  const { makeScope } = await import("@/lib/auth/scope");
  const currentPerson = async () => {
    const person = asked.userId ? await unscopedPerson(asked.userId as UserId) : null;
    return person ? { ...person, userId: person.userId } : null;
  };
  const currentScope = async () => {
    const person = await currentPerson();
    const company = person?.companies[0];
    return person && company ? makeScope({ ...company, userId: person.userId }) : null;
  };
  return { COMPANY_COOKIE: "dewledger-company", currentPerson, currentScope };
});

let crew: Crew;
let job: JobId;
let neverHis: JobId;

beforeEach(async () => {
  crew = await makeCrew();
  job = await openJob(crew.office, { techIds: [crew.tech.userId] });
  neverHis = await openJob(crew.office, { techIds: [crew.otherTech.userId] });
  await fieldContacts(crew.tech).note([job]);
});
afterAll(closeDatabase);

type Route = (request: Request, context: { params: Promise<Record<string, string>> }) => Promise<Response>;

/** Calls a door with the headers of a phone that holds this person's data of this company. */
async function call(
  door: Route,
  method: string,
  given: {
    readonly signedIn: TenantScope;
    readonly holds?: TenantScope;
    readonly params?: Record<string, string>;
    readonly query?: string;
    readonly body?: BodyInit;
  },
): Promise<{ readonly status: number; readonly code: string | undefined; readonly text: string }> {
  asked.userId = given.signedIn.userId;
  const holds = given.holds ?? given.signedIn;
  const headers = { [PERSON_HEADER]: holds.userId, [COMPANY_HEADER]: holds.tenantId };
  const body = given.body === undefined ? {} : { body: given.body };
  const request = new Request(`http://localhost/${given.query ?? ""}`, { method, headers, ...body });
  const answer = await door(request, { params: Promise.resolve(given.params ?? {}) });
  const text = await answer.text();
  return { status: answer.status, code: text === "" ? undefined : JSON.parse(text).code, text };
}

const SENT = { deviceTime: "2026-07-01T12:00:00.000Z" };
const change = (value: string | number | boolean | null) => ({ base: null, value });
const readings = (fields: object, jobId: string = job, clientId: string = randomUUID()) =>
  JSON.stringify({ ...SENT, clientId, jobs: [{ jobId, fields }] });
const photoCall = (signedIn: TenantScope, jobId: string = job) => ({
  signedIn,
  params: { jobId, photoId: randomUUID() },
  query: `?sha256=${sha256Of(PHOTO)}`,
  body: PHOTO,
});
const remove = () => members(crew.owner).remove(crew.tech.userId);

test("a removed person is told so, may hand over what the phone holds, and reads nothing", async () => {
  expect((await call(bundleRoute.GET, "GET", { signedIn: crew.tech })).status).toBe(200);
  await remove();
  const bundle = await call(bundleRoute.GET, "GET", { signedIn: crew.tech });
  expect([bundle.status, bundle.code]).toEqual([410, "REMOVED"]);
  const body = JSON.stringify({ ...SENT, clientId: randomUUID(), fields: { outdoorDbF: change(91) } });
  const sync = await call(syncRoute.PUT, "PUT", { signedIn: crew.tech, params: { jobId: job }, body });
  expect([sync.status, sync.code]).toEqual([410, "REMOVED"]);

  const offered = readings({ outdoorDbF: change(91), outdoorUnitAmps: change("nine"), madeUp: change(1) });
  for (let time = 0; time < 3; time++) {
    const kept = await call(handOverRoute.POST, "POST", { signedIn: crew.tech, body: offered });
    expect([kept.status, kept.text]).toEqual([200, '{"kept":true}']);
  }
  const photo = photoCall(crew.tech);
  for (let time = 0; time < 2; time++) {
    const kept = await call(photoRoute.PUT, "PUT", photo);
    expect([kept.status, kept.text]).toEqual([200, '{"kept":true}']);
  }
  const late = await lateReadings(crew.office, job);
  expect(late.values.map((one) => [one.fieldPath, one.value])).toEqual([
    ["madeUp", 1],
    ["outdoorDbF", 91],
    ["outdoorUnitAmps", "nine"],
  ]);
  expect(late.photos.map((one) => one.id)).toEqual([photo.params.photoId]);
  expect(await listFiles(crew.office, job)).toEqual([]);
  expect((await stageRecords(crew.owner).latest(job)).startup_record).toBeNull();
  const told = (await activity(crew.owner).list({ jobId: job, take: 50 })).map((line) => line.action);
  expect(told).toContain("Startup record: late readings kept for the office");
  expect(told).toContain("photo kept for the office");
});

test("jobs that were never on the phone, other companies and strangers get nothing in", async () => {
  await remove();
  const elsewhere = await makeCrew();
  const foreign = await openJob(elsewhere.office, {});
  for (const jobId of [neverHis, foreign, randomUUID()]) {
    const body = readings({ outdoorDbF: change(91) }, jobId);
    const tried = await call(handOverRoute.POST, "POST", { signedIn: crew.tech, body });
    const unknown = await call(handOverRoute.POST, "POST", {
      signedIn: crew.tech,
      body: readings({ outdoorDbF: change(91) }, randomUUID()),
    });
    expect(tried).toEqual(unknown);
    expect(tried.code).toBe("NOT_FOUND");
    expect((await call(photoRoute.PUT, "PUT", photoCall(crew.tech, jobId))).code).toBe("NOT_FOUND");
  }
  // One known job does not carry an unknown one in.
  const mixed = JSON.stringify({
    ...SENT,
    clientId: randomUUID(),
    jobs: [job, neverHis].map((jobId) => ({ jobId, fields: { outdoorDbF: change(91) } })),
  });
  expect((await call(handOverRoute.POST, "POST", { signedIn: crew.tech, body: mixed })).code).toBe(
    "NOT_FOUND",
  );
  const asStranger = { signedIn: elsewhere.tech, holds: { ...crew.tech, userId: elsewhere.tech.userId } };
  const stranger = { ...asStranger, body: readings({ outdoorDbF: change(91) }) } as never;
  expect((await call(handOverRoute.POST, "POST", stranger)).code).toBe("NOT_FOUND");
  expect((await lateReadings(crew.office, job)).values).toEqual([]);
  expect((await lateReadings(crew.office, neverHis)).values).toEqual([]);
});

test("nothing of one person goes in while another is signed in", async () => {
  const body = JSON.stringify({ ...SENT, clientId: randomUUID(), fields: { outdoorDbF: change(91) } });
  const holds = crew.tech;
  for (const signedIn of [crew.otherTech, crew.office]) {
    const given = { signedIn, holds, params: { jobId: job }, body };
    const sync = await call(syncRoute.PUT, "PUT", given);
    expect([sync.status, sync.code]).toEqual([409, "OTHER_PERSON"]);
    const offered = { signedIn, holds, body: readings({ outdoorDbF: change(91) }) };
    expect((await call(handOverRoute.POST, "POST", offered)).code).toBe("OTHER_PERSON");
    expect((await call(bundleRoute.GET, "GET", { signedIn, holds })).code).toBe("OTHER_PERSON");
  }
  expect((await stageRecords(crew.owner).latest(job)).startup_record).toBeNull();
  // Signed in again as the same person, the same upload goes through.
  const again = await call(syncRoute.PUT, "PUT", { signedIn: crew.tech, params: { jobId: job }, body });
  expect(again.status).toBe(200);
});

test("nobody signed in is told to sign in, in words a phone can tell from a removal", async () => {
  asked.userId = null;
  const request = new Request("http://localhost/", { headers: { [COMPANY_HEADER]: crew.tech.tenantId } });
  const answer = await bundleRoute.GET(request, { params: Promise.resolve({}) });
  expect([answer.status, (await answer.json()).code]).toEqual([401, "NOT_SIGNED_IN"]);
});

test("somebody who is unassigned hands over the same way and sees the job no more", async () => {
  const { version } = await getJob(crew.office, job);
  const plan = { jobId: job, expectedVersion: version, startupDue: null, reviewDue: null, techIds: [] };
  await scheduleJob(crew.office, plan);
  const body = JSON.stringify({ ...SENT, clientId: randomUUID(), fields: { outdoorDbF: change(91) } });
  const sync = await call(syncRoute.PUT, "PUT", { signedIn: crew.tech, params: { jobId: job }, body });
  expect([sync.status, sync.code]).toEqual([404, "NOT_FOUND"]);
  const offered = { signedIn: crew.tech, body: readings({ outdoorDbF: change(91) }) };
  expect((await call(handOverRoute.POST, "POST", offered)).status).toBe(200);
  expect((await lateReadings(crew.office, job)).values).toHaveLength(1);
});

test("a grudge fills neither desk nor disk: too many values and too many calls are refused", async () => {
  await remove();
  const fields = Object.fromEntries(
    Array.from({ length: 290 }, (_, index) => [`field${index}`, change(index)]),
  );
  for (let time = 0; time < 6; time++)
    expect(
      (await call(handOverRoute.POST, "POST", { signedIn: crew.tech, body: readings(fields) })).status,
    ).toBe(200);
  const over = await call(handOverRoute.POST, "POST", { signedIn: crew.tech, body: readings(fields) });
  expect([over.status, over.code]).toEqual([429, "TOO_MANY_TRIES"]);
  const large = JSON.stringify({ ...SENT, note: "x".repeat(300_000) });
  expect((await call(handOverRoute.POST, "POST", { signedIn: crew.tech, body: large })).status).toBe(413);
  const small = () =>
    call(handOverRoute.POST, "POST", { signedIn: crew.tech, body: readings({ a: change(1) }) });
  const codes: number[] = [];
  for (let time = 0; time < 200; time++) codes.push((await small()).status);
  expect(codes.at(-1)).toBe(429);
  // Others are not held up by it.
  const other = { signedIn: crew.otherTech, params: { jobId: neverHis } };
  const body = JSON.stringify({ ...SENT, clientId: randomUUID(), fields: { outdoorDbF: change(91) } });
  expect((await call(syncRoute.PUT, "PUT", { ...other, body })).status).toBe(200);
}, 60_000);

test("two months after leaving nothing is taken any more", async () => {
  await remove();
  const { tenantId, userId } = crew.tech;
  const removedAt = new Date(Date.now() - 61 * 86_400_000);
  await unscopedTransaction((tx) =>
    tx.membership.updateMany({ where: { tenantId, userId }, data: { removedAt } }),
  );
  const tried = await call(handOverRoute.POST, "POST", {
    signedIn: crew.tech,
    body: readings({ outdoorDbF: change(91) }),
  });
  expect([tried.status, tried.code]).toEqual([410, "HAND_OVER_CLOSED"]);
});

test("the office takes or discards each value and picture; an impossible one is refused by name; all on the trail", async () => {
  await remove();
  const offered = readings({ outdoorDbF: change(91), supplyVoltage: change(9_000), notes: change("loud") });
  await call(handOverRoute.POST, "POST", { signedIn: crew.tech, body: offered });
  await call(photoRoute.PUT, "PUT", photoCall(crew.tech));
  const { values, photos } = await lateReadings(crew.office, job);
  const idOf = (field: string) => given(values.find((one) => one.fieldPath === field)).id;
  const decide = (field: string, take: boolean) =>
    decideLateValue(crew.office, { jobId: job, id: idOf(field), take });
  await decide("outdoorDbF", true);
  expect((await refusedBy(decide("supplyVoltage", true))).code).toBe("INVALID_INPUT");
  await decide("supplyVoltage", false);
  await decide("notes", false);
  expect((await refusedBy(decide("notes", true))).code).toBe("NOT_FOUND");
  await decideLatePhoto(crew.office, { jobId: job, id: given(photos[0]).id, take: true });
  expect(await listFiles(crew.office, job)).toHaveLength(1);
  expect(await lateReadings(crew.office, job)).toEqual({ values: [], photos: [] });
  const { inputs } = given((await stageRecords(crew.owner).latest(job)).startup_record);
  expect([inputs.outdoorDbF, inputs.supplyVoltage, inputs.notes]).toEqual([91, null, null]);
  const told = (await activity(crew.owner).list({ jobId: job, take: 50 })).map((line) => line.action);
  expect(told.filter((action) => action.startsWith("Startup record: late reading "))).toHaveLength(3);
  expect(told).toContain("late photo taken");
});

test("a value for a signed record waits until the record is open again", async () => {
  const { version } = await save(crew.office, job, "startup_record", STARTUP);
  await sign(crew.owner, job, "startup_record", version);
  await call(handOverRoute.POST, "POST", { signedIn: crew.tech, body: readings({ outdoorDbF: change(90) }) });
  const { values } = await lateReadings(crew.office, job);
  const taking = decideLateValue(crew.office, { jobId: job, id: given(values[0]).id, take: true });
  expect((await refusedBy(taking)).code).toBe("SIGNED_RECORD");
  expect((await lateReadings(crew.office, job)).values).toHaveLength(1);
});

test("what waits is not shown to a tech who is assigned later", async () => {
  await call(photoRoute.PUT, "PUT", photoCall(crew.tech));
  expect(await listFiles(crew.tech, job)).toEqual([]);
  const held = await withTenant(crew.owner, (tx) =>
    tx.attachment.count({ where: { tenantId: crew.owner.tenantId, heldAt: { not: null } } }),
  );
  expect(held).toBe(1);
});
