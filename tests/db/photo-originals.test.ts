import { randomBytes, randomUUID } from "node:crypto";
import { afterAll, beforeAll, beforeEach, expect, test } from "vitest";
import { activity } from "@/lib/db/activity";
import { closeDatabase } from "@/lib/db/client";
import { photoOriginals } from "@/lib/db/photo-originals";
import type { JobId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { sha256Of } from "@/lib/files/store";
import { addFile, listFiles, readFile } from "@/lib/services/attachments";
import { fieldBundle } from "@/lib/services/field-bundle";
import { fieldOfficeView } from "@/lib/services/field-office";
import { getJob } from "@/lib/services/jobs";
import { addOriginal, askOriginal, sayNoOriginal, withdrawOriginal } from "@/lib/services/photo-originals";
import { scheduleJob } from "@/lib/services/plan-job";
import { type Crew, makeCrew } from "../support/people";
import { PHOTO, photoWithMetadata } from "../support/photo";
import { openJob, refusedBy, STARTUP, save, sign } from "../support/service-jobs";

let crew: Crew;
let job: JobId;
let photoId: string;
let camera: Uint8Array;

beforeAll(async () => {
  crew = await makeCrew();
  camera = await photoWithMetadata();
});
beforeEach(async () => {
  job = await openJob(crew.office, { techIds: [crew.tech.userId] });
  photoId = randomUUID();
  await addFile(crew.tech, {
    ...{ jobId: job, id: photoId, kind: "photo", stage: "startup_record", fileName: "photo", bytes: PHOTO },
    details: { sha256: sha256Of(PHOTO), caption: "Drain and trap" },
  });
});
afterAll(closeDatabase);

const ask = (scope: TenantScope) => askOriginal(scope, { jobId: job, photoId });
const send = (scope: TenantScope, bytes: Uint8Array, sha256 = sha256Of(bytes)) =>
  addOriginal(scope, { jobId: job, photoId, bytes, sha256 });
const wishesOf = async (scope: TenantScope) =>
  (await fieldBundle(scope, null)).bundle?.originals?.asked.filter((one) => one.photoId === photoId);
const stateOf = async () => (await listFiles(crew.office, job))[0]?.original;
const trailOf = async () =>
  (await activity(crew.owner).list({ jobId: job, take: 100 }))
    .map((line) => line.action)
    .filter((one) => one.startsWith("original"));

test("asked for, it is in the bundle of who took it; received, the office opens the camera's own bytes", async () => {
  expect(await wishesOf(crew.tech)).toEqual([]);
  const before = (await fieldBundle(crew.tech, null)).etag;
  await ask(crew.office);
  await ask(crew.office);
  const news = await fieldBundle(crew.tech, before);
  expect(news.bundle?.originals?.asked).toContainEqual({ photoId, jobId: job, caption: "Drain and trap" });
  expect(await wishesOf(crew.otherTech)).toEqual([]);
  expect(await stateOf()).toBe("asked");

  expect((await send(crew.tech, camera)).original).toBe("received");
  const after = await fieldBundle(crew.tech, news.etag);
  expect(after.bundle?.originals?.asked.filter((one) => one.photoId === photoId)).toEqual([]);
  expect(await listFiles(crew.office, job)).toMatchObject([{ id: photoId, original: "received" }]);
  const kept = await readFile(crew.office, job, photoId, "camera");
  expect([sha256Of(kept.bytes), kept.mime]).toEqual([sha256Of(camera), "image/jpeg"]);
  // What the phone had sent first stays what it was.
  expect(sha256Of((await readFile(crew.office, job, photoId, "original")).bytes)).toBe(sha256Of(PHOTO));
  expect((await trailOf()).toSorted()).toEqual(["original photo asked for", "original photo received"]);
});

test("sent again, also four times at once, it is one original; another one is refused", async () => {
  await ask(crew.office);
  await Promise.all(Array.from({ length: 4 }, () => send(crew.tech, camera)));
  await send(crew.tech, camera);
  expect((await trailOf()).filter((one) => one === "original photo received")).toHaveLength(1);
  expect(await refusedBy(send(crew.tech, PHOTO))).toMatchObject({ code: "CONFLICT" });
  // Asked again, nothing is to be sent any more, and a late "gone" does not take it away.
  await ask(crew.office);
  await sayNoOriginal(crew.tech, { jobId: job, photoId, why: "gone" });
  expect(await stateOf()).toBe("received");
});

test("another company, a tech without the job and whoever did not take it get what an unknown id gets", async () => {
  const strangers = await makeCrew();
  for (const scope of [strangers.owner, strangers.office, crew.otherTech])
    expect((await refusedBy(ask(scope))).code).toBe("NOT_FOUND");
  expect(await stateOf()).toBeNull();
  await ask(crew.office);
  for (const scope of [strangers.owner, strangers.tech, crew.otherTech, crew.office]) {
    expect((await refusedBy(send(scope, camera))).code).toBe("NOT_FOUND");
    const gone = sayNoOriginal(scope, { jobId: job, photoId, why: "gone" });
    expect((await refusedBy(gone)).code).toBe("NOT_FOUND");
  }
  expect(await stateOf()).toBe("asked");
  await send(crew.tech, camera);
  for (const scope of [strangers.owner, crew.otherTech])
    expect((await refusedBy(readFile(scope, job, photoId, "camera"))).code).toBe("NOT_FOUND");
});

test("unasked, cut on its way or no picture, nothing is kept; a phone that has none says so once", async () => {
  expect((await refusedBy(send(crew.tech, camera))).code).toBe("CONFLICT");
  await ask(crew.office);
  const cut = send(crew.tech, camera.subarray(0, 300), sha256Of(camera));
  expect(await refusedBy(cut)).toMatchObject({ code: "INVALID_INPUT", fields: [{ field: "sha256" }] });
  expect((await refusedBy(send(crew.tech, randomBytes(900)))).code).toBe("UNSUPPORTED_FILE");
  expect((await refusedBy(send(crew.tech, new Uint8Array(20 * 1024 * 1024 + 1)))).code).toBe("TOO_LARGE");
  expect(await stateOf()).toBe("asked");
  await sayNoOriginal(crew.tech, { jobId: job, photoId, why: "gone" });
  await sayNoOriginal(crew.tech, { jobId: job, photoId, why: "gone" });
  expect(await stateOf()).toBe("gone");
  expect(await wishesOf(crew.tech)).toEqual([]);
  expect((await trailOf()).toSorted()).toEqual([
    "original photo asked for",
    "original photo no longer on the phone",
  ]);
});

test("originals of a job stay on the phone until 30 days after its startup was signed", async () => {
  const keeps = async (now: number) => (await photoOriginals(crew.tech).keptOf(new Date(now))).includes(job);
  const day = 86_400_000;
  expect(await keeps(Date.now() + 400 * day)).toBe(true);
  await save(crew.office, job, "startup_record", STARTUP);
  await sign(crew.office, job, "startup_record", 1);
  expect(await keeps(Date.now() + 29 * day)).toBe(true);
  expect(await keeps(Date.now() + 31 * day)).toBe(false);
  expect(await photoOriginals(crew.otherTech).keptOf(new Date())).not.toContain(job);
});

test("withdrawn, the phone is asked no more and what it sends is refused; asked again it comes", async () => {
  await ask(crew.office);
  const before = await fieldBundle(crew.tech, null);
  await withdrawOriginal(crew.office, { jobId: job, photoId });
  await withdrawOriginal(crew.office, { jobId: job, photoId });
  expect(await stateOf()).toBeNull();
  expect((await fieldBundle(crew.tech, before.etag)).bundle?.originals?.asked).toEqual([]);
  expect((await refusedBy(send(crew.tech, camera))).code).toBe("CONFLICT");
  await ask(crew.office);
  expect((await send(crew.tech, camera)).original).toBe("received");
  // What has come is not given back.
  await withdrawOriginal(crew.office, { jobId: job, photoId });
  expect(await stateOf()).toBe("received");
  const strangers = await makeCrew();
  for (const scope of [strangers.owner, crew.otherTech])
    expect((await refusedBy(withdrawOriginal(scope, { jobId: job, photoId }))).code).toBe("NOT_FOUND");
  expect((await trailOf()).filter((one) => one === "original photo no longer asked for")).toHaveLength(1);
});

test("a wish that nothing answers for 30 days has ended: the phone is asked no more, the office may ask again", async () => {
  const day = 86_400_000;
  const ago = (days: number) => new Date(Date.now() - days * day);
  await photoOriginals(crew.office).ask(job, photoId, ago(29));
  expect([await stateOf(), (await wishesOf(crew.tech))?.length]).toEqual(["asked", 1]);
  await withdrawOriginal(crew.office, { jobId: job, photoId });
  await photoOriginals(crew.office).ask(job, photoId, ago(31));
  const ended = await fieldBundle(crew.tech, null);
  expect([await stateOf(), ended.bundle?.originals?.asked]).toEqual(["ended", []]);
  await ask(crew.office);
  // The phone that has the older bundle hears of it.
  expect((await fieldBundle(crew.tech, ended.etag)).bundle?.originals?.asked).toMatchObject([{ photoId }]);
  // It ended for the office; a phone that was off for two months may still send it.
  await withdrawOriginal(crew.office, { jobId: job, photoId });
  await photoOriginals(crew.office).ask(job, photoId, ago(60));
  expect((await send(crew.tech, camera)).original).toBe("received");
});

test("the office sees on whose phone an original is, and when that phone will not hear of a wish", async () => {
  const taker = async () => (await fieldOfficeView(crew.office, job)).photos[0]?.taker;
  await fieldBundle(crew.tech, null);
  expect(await taker()).toMatchObject({ isHere: true, isOnJob: true, lastContact: expect.any(String) });
  const { version } = await getJob(crew.office, job);
  const nobody = { startupDue: null, reviewDue: null, techIds: [] };
  await scheduleJob(crew.office, { jobId: job, expectedVersion: version, ...nobody });
  expect(await taker()).toMatchObject({ isHere: true, isOnJob: false });
});
