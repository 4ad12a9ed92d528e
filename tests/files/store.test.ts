import { mkdtemp, readdir, rm, utimes, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { asId, type TenantId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import {
  deleteAllStoredFiles,
  deleteStoredFile,
  readStoredFile,
  storeFile,
  streamStoredFile,
} from "@/lib/files/store";
import { sweepAtNight } from "@/lib/services/sweep-files";

const A: TenantId = asId("0b0e7a52-6f1c-4d55-9d1e-000000000001");
const B: TenantId = asId("0b0e7a52-6f1c-4d55-9d1e-000000000002");
/** SHA-256 of the three bytes "abc": FIPS 180-4, example in appendix B.1 of FIPS 180-2 [published]. */
const ABC = "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad";
const abc = new TextEncoder().encode("abc");
let dataDir: string;

beforeAll(async () => {
  dataDir = await mkdtemp(join(tmpdir(), "files-"));
  vi.stubEnv("DATABASE_URL", "postgresql://localhost/none");
  vi.stubEnv("NEXTAUTH_SECRET", "x".repeat(32));
  vi.stubEnv("DATA_DIR", dataDir);
});
afterAll(async () => {
  vi.unstubAllEnvs();
  await rm(dataDir, { recursive: true });
});

test("bytes are kept under their SHA-256, once, with nothing half-written beside them", async () => {
  const stored = await storeFile(A, abc, "log", "log");
  expect(stored).toEqual({ sha256: ABC, size: 3, mime: "text/csv" });
  await Promise.all([storeFile(A, abc, "log", "log"), storeFile(A, abc, "log", "log")]);
  expect(await readdir(join(dataDir, "files", A, "ba"))).toEqual([ABC]);
  expect(await readStoredFile(A, ABC)).toEqual(Buffer.from("abc"));
});

test("a stream gives the same bytes and the size", async () => {
  await storeFile(A, abc, "log", "log");
  const { size, stream } = await streamStoredFile(A, ABC);
  expect(size).toBe(3);
  expect(await new Response(stream).text()).toBe("abc");
});

test("another company's file is answered like one that does not exist", async () => {
  await storeFile(A, abc, "log", "log");
  const missing = { code: "NOT_FOUND" };
  await expect(readStoredFile(B, ABC)).rejects.toMatchObject(missing);
  await expect(streamStoredFile(B, ABC)).rejects.toMatchObject(missing);
  await expect(readStoredFile(A, "0".repeat(64))).rejects.toMatchObject(missing);
});

test.each(["../secret", "", `${ABC}/..`, ABC.toUpperCase(), `${"../".repeat(10)}etc/passwd`])(
  "the name %j leads nowhere",
  async (name) => {
    await expect(readStoredFile(A, name)).rejects.toMatchObject({ code: "NOT_FOUND" });
    await expect(readStoredFile(asId(name), ABC)).rejects.toMatchObject({ code: "NOT_FOUND" });
    await expect(deleteAllStoredFiles(asId(name))).rejects.toMatchObject({ code: "NOT_FOUND" });
  },
);

test("damage on the disk is noticed when reading and repaired by storing again", async () => {
  await storeFile(A, abc, "log", "log");
  await writeFile(join(dataDir, "files", A, "ba", ABC), "abd");
  await expect(readStoredFile(A, ABC)).rejects.toThrow("damaged");
  await storeFile(A, abc, "log", "log");
  expect(await readStoredFile(A, ABC)).toEqual(Buffer.from("abc"));
});

test("deleting one file, twice, and all files of one company only", async () => {
  await storeFile(A, abc, "log", "log");
  await storeFile(B, abc, "log", "log");
  await deleteStoredFile(A, ABC);
  await deleteStoredFile(A, ABC);
  await expect(readStoredFile(A, ABC)).rejects.toMatchObject({ code: "NOT_FOUND" });
  await storeFile(A, abc, "log", "log");
  await deleteAllStoredFiles(A);
  await expect(readStoredFile(A, ABC)).rejects.toMatchObject({ code: "NOT_FOUND" });
  expect(await readStoredFile(B, ABC)).toEqual(Buffer.from("abc"));
});

test("at night what a killed writer left for a day is swept; what is whole or still being written stays", async () => {
  const scope = { tenantId: A } as TenantScope;
  const night = new Date("2026-07-02T08:07:00Z");
  const old = new Date("2026-07-01T08:00:00Z");
  const folder = join(dataDir, "files", A);
  await storeFile(A, abc, "log", "log");
  const [whole, half, part, writing] = [`ba/${ABC}`, `ba/${ABC}.3141592`, "0b0e7a52.part", "1c1e7a52.part"];
  for (const name of [half, part, writing]) await writeFile(join(folder, name), "half of it");
  for (const name of [whole, half, part]) await utimes(join(folder, name), old, old);
  await utimes(join(folder, writing), night, night);
  const held = async () =>
    (await readdir(folder, { recursive: true })).filter((name) => name !== "ba").toSorted();
  await sweepAtNight(scope, new Date("2026-07-02T09:07:00Z"));
  expect(await held()).toEqual([part, writing, whole, half].toSorted());
  await sweepAtNight({ tenantId: B } as TenantScope, night);
  await sweepAtNight({ tenantId: asId("0b0e7a52-6f1c-4d55-9d1e-00000000000f") } as TenantScope, night);
  expect(await held()).toHaveLength(4);
  await sweepAtNight(scope, night);
  expect(await held()).toEqual([writing, whole].toSorted());
  expect(await readStoredFile(A, ABC)).toEqual(Buffer.from("abc"));
});

const pdf = new TextEncoder().encode("%PDF-1.7\n%âãÏÓ\n");
const zip = new Uint8Array([0x50, 0x4b, 0x03, 0x04, ...new Array(40).fill(0)]);

test("the type is told by content, not by name", async () => {
  expect(await storeFile(A, pdf, "packet", "packet")).toMatchObject({ mime: "application/pdf" });
  const utf16 = new Uint8Array([0xff, 0xfe, 0x61, 0x00]);
  expect(await storeFile(A, utf16, "log", "log")).toMatchObject({ mime: "text/csv" });
});

test.each([
  ["a PDF as a photo", pdf, "photo"],
  ["a zip as a photo", zip, "photo"],
  ["zero bytes as a log", new Uint8Array([0x61, 0x00, 0x62]), "log"],
  ["an empty log", new Uint8Array(), "log"],
  ["text as a packet", abc, "packet"],
] as const)("refuses %s", async (_what, bytes, kind) => {
  await expect(storeFile(A, bytes, kind, "upload")).rejects.toMatchObject({
    code: "UNSUPPORTED_FILE",
    fields: [{ field: "upload", message: expect.stringMatching(/Send|PDF/) }],
  });
});

test("refuses a photo above its limit before reading it", async () => {
  const large = new Uint8Array(20 * 1024 * 1024 + 1);
  await expect(storeFile(A, large, "photo", "photo")).rejects.toMatchObject({ code: "TOO_LARGE" });
});
