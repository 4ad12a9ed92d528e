import { randomBytes, randomUUID } from "node:crypto";
import { readdir } from "node:fs/promises";
import path from "node:path";
import sharp from "sharp";
import { afterAll, beforeAll, beforeEach, expect, test, vi } from "vitest";
import { activity } from "@/lib/db/activity";
import * as repository from "@/lib/db/attachments";
import { closeDatabase } from "@/lib/db/client";
import type { JobId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { env } from "@/lib/env";
import { sha256Of } from "@/lib/files/store";
import { addFile, listFiles, readFile, removeFile } from "@/lib/services/attachments";
import { addReport, listReports, readReport, removeReport } from "@/lib/services/design-reports";
import { type Crew, makeCrew } from "../support/people";
import { PHOTO, photoWithMetadata } from "../support/photo";
import { openJob, refusedBy } from "../support/service-jobs";

let crew: Crew;
let job: JobId;

beforeAll(async () => {
  crew = await makeCrew();
});
beforeEach(async () => {
  job = await openJob(crew.office, { techIds: [crew.tech.userId] });
});
afterAll(closeDatabase);

function send(scope: TenantScope, bytes: Uint8Array, id: string = randomUUID(), more: object = {}) {
  const details = { sha256: sha256Of(bytes), caption: "", ...more };
  return addFile(scope, {
    jobId: job,
    id,
    kind: "photo",
    stage: "startup_record",
    fileName: "photo",
    bytes,
    details,
  });
}

async function storedNames(): Promise<readonly string[]> {
  const folder = path.join(env().DATA_DIR, "files", crew.tech.tenantId);
  return (await readdir(folder, { recursive: true }).catch(() => [])).toSorted();
}

test("a picture is shown upright and without place, time or camera; what came is kept to the byte", async () => {
  const bytes = await photoWithMetadata();
  expect(String(Buffer.from(bytes).toString("latin1"))).toContain("Camera of a test");
  const kept = await send(crew.tech, bytes, randomUUID(), {
    field: "outdoorDbF",
    takenAt: "2026-07-01T12:00:00.000Z",
    latitude: 29.5,
    longitude: -95.1,
  });
  // 320 × 200 held sideways.
  expect(kept).toMatchObject({ widthPx: 200, heightPx: 320, mime: "image/jpeg", fieldPath: "outdoorDbF" });
  for (const size of ["small", "full"] as const) {
    const shown = await readFile(crew.office, job, kept.id, size);
    const found = await sharp(shown.bytes).metadata();
    expect([found.width, found.height, found.exif, found.orientation]).toEqual([
      200,
      320,
      undefined,
      undefined,
    ]);
  }
  expect(sha256Of((await readFile(crew.office, job, kept.id, "original")).bytes)).toBe(sha256Of(bytes));
});

test("a HEIC picture that no browser here can draw is kept to the byte and not shown as a broken one", async () => {
  // The first box of such a file and some bytes (ISO/IEC 14496-12, 4.3).
  const heic = new Uint8Array(
    Buffer.concat([Buffer.from([0, 0, 0, 24]), Buffer.from("ftypheic"), randomBytes(64)]),
  );
  const kept = await send(crew.tech, heic);
  expect(kept).toMatchObject({ widthPx: null, heightPx: null, mime: "image/heic" });
  expect((await refusedBy(readFile(crew.office, job, kept.id, "small"))).code).toBe("NOT_FOUND");
  expect(Buffer.from((await readFile(crew.office, job, kept.id, "original")).bytes)).toEqual(
    Buffer.from(heic),
  );
});

test("the same picture sent again, also four times at once, is kept once", async () => {
  const id = randomUUID();
  const answers = await Promise.all(Array.from({ length: 4 }, () => send(crew.tech, PHOTO, id)));
  for (const one of answers) expect(one).toEqual(answers[0]);
  expect(await listFiles(crew.office, job)).toHaveLength(1);
  const entries = await activity(crew.owner).list({ jobId: job, take: 100 });
  expect(entries.filter((line) => line.action === "photo added")).toHaveLength(1);
});

test("an id used for other bytes is refused, and so is what arrived cut or is no picture", async () => {
  const id = randomUUID();
  await send(crew.tech, PHOTO, id);
  expect((await refusedBy(send(crew.tech, await photoWithMetadata(), id))).code).toBe("CONFLICT");
  const cut = send(crew.tech, PHOTO.subarray(0, 200), randomUUID(), { sha256: sha256Of(PHOTO) });
  expect(await refusedBy(cut)).toMatchObject({ code: "INVALID_INPUT", fields: [{ field: "sha256" }] });
  const before = await storedNames();
  expect((await refusedBy(send(crew.tech, PHOTO.subarray(0, 200)))).code).toBe("UNSUPPORTED_FILE");
  expect((await refusedBy(send(crew.tech, randomBytes(900)))).code).toBe("UNSUPPORTED_FILE");
  expect((await refusedBy(send(crew.tech, PHOTO, randomUUID(), { field: "colour" }))).code).toBe(
    "INVALID_INPUT",
  );
  expect(await storedNames()).toEqual(before);
  expect(await listFiles(crew.office, job)).toHaveLength(1);
});

test("when the row cannot be kept its bytes are not left behind; bytes of another row stay", async () => {
  const first = await send(crew.tech, PHOTO);
  const before = await storedNames();
  const real = repository.attachments;
  const broken = vi.spyOn(repository, "attachments").mockImplementation((scope) => ({
    ...real(scope),
    add: async () => {
      throw new Error("The database went away.");
    },
  }));
  await expect(send(crew.tech, await photoWithMetadata())).rejects.toThrow("went away");
  await expect(send(crew.tech, PHOTO)).rejects.toThrow("went away");
  broken.mockRestore();
  expect(await storedNames()).toEqual(before);
  expect((await readFile(crew.tech, job, first.id, "original")).bytes).toEqual(Buffer.from(PHOTO));
});

test("a tech removes only their own; the trail tells of it; a second removal changes nothing", async () => {
  const both = await openJob(crew.office, { techIds: [crew.tech.userId, crew.otherTech.userId] });
  job = both;
  const kept = await send(crew.tech, PHOTO);
  expect((await refusedBy(removeFile(crew.otherTech, job, kept.id))).code).toBe("NOT_FOUND");
  await removeFile(crew.tech, job, kept.id);
  await removeFile(crew.tech, job, kept.id);
  expect(await listFiles(crew.office, job)).toEqual([]);
  expect((await refusedBy(readFile(crew.office, job, kept.id, "full"))).code).toBe("NOT_FOUND");
  const entries = await activity(crew.owner).list({ jobId: job, take: 100 });
  expect(entries.filter((line) => line.action === "photo removed")).toHaveLength(1);
});

test("a designer's report is read back to the byte, once however often it is sent, and by nobody else", async () => {
  const bytes = new TextEncoder().encode("%PDF-1.7\nload of a house\n");
  const report = { jobId: job, fileName: "load.pdf", bytes };
  const kept = await addReport(crew.office, report);
  expect(await addReport(crew.office, { ...report, fileName: "again.pdf" })).toEqual(kept);
  expect(await listReports(crew.tech, job)).toHaveLength(1);
  expect(Buffer.from((await readReport(crew.tech, job, kept.id)).bytes)).toEqual(Buffer.from(bytes));
  const picture = await send(crew.tech, PHOTO);
  // A picture is no report, wherever its id is tried.
  expect((await refusedBy(readReport(crew.office, job, picture.id))).code).toBe("NOT_FOUND");
  expect((await refusedBy(removeReport(crew.office, job, picture.id))).code).toBe("NOT_FOUND");
  const strangers = await makeCrew();
  for (const scope of [crew.otherTech, strangers.owner])
    expect((await refusedBy(readReport(scope, job, kept.id))).code).toBe("NOT_FOUND");
  await removeReport(crew.office, job, kept.id);
  expect(await listReports(crew.office, job)).toEqual([]);
  expect((await refusedBy(readReport(crew.office, job, kept.id))).code).toBe("NOT_FOUND");
  expect((await refusedBy(addReport(crew.office, { ...report, bytes: PHOTO }))).code).toBe(
    "UNSUPPORTED_FILE",
  );
});

test("a designer's report is kept the same way, as a PDF and nothing else", async () => {
  const file = {
    jobId: job,
    id: randomUUID(),
    kind: "report",
    stage: "load_summary",
    fileName: "load",
  } as const;
  const pdf = new TextEncoder().encode("%PDF-1.7\n");
  const kept = await addFile(crew.office, {
    ...file,
    bytes: pdf,
    details: { sha256: sha256Of(pdf), caption: "" },
  });
  expect(kept).toMatchObject({
    kind: "report",
    stage: "load_summary",
    mime: "application/pdf",
    widthPx: null,
  });
  const asPhoto = {
    ...file,
    id: randomUUID(),
    bytes: PHOTO,
    details: { sha256: sha256Of(PHOTO), caption: "" },
  };
  expect((await refusedBy(addFile(crew.office, asPhoto))).code).toBe("UNSUPPORTED_FILE");
});
