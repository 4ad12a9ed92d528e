import { createHash, randomUUID } from "node:crypto";
import { createReadStream, createWriteStream } from "node:fs";
import { mkdir, open, readdir, readFile, rename, rm, stat } from "node:fs/promises";
import { basename, dirname, join } from "node:path";
import { PassThrough, Readable } from "node:stream";
import { pipeline } from "node:stream/promises";
import writeFileAtomic from "write-file-atomic";
import { env } from "@/lib/env";
import { AppError, notFound } from "@/lib/errors";
import type { FileKind } from "./kinds";
import { sniffAllowed } from "./sniff";

/** A file's name is the SHA-256 of its bytes, 64 hex digits: the same bytes are kept once per company. */
export type StoredFile = { readonly sha256: string; readonly size: number; readonly mime: string };

/**
 * Keeps the bytes of a file for one company. When this returns, they survive a power failure.
 *
 * @param field - The name of the form's field, for the error.
 * @throws AppError `TOO_LARGE` or `UNSUPPORTED_FILE`, naming the field and what to send instead.
 */
export async function storeFile(
  tenantId: string,
  bytes: Uint8Array,
  kind: FileKind,
  field: string,
): Promise<StoredFile> {
  const mime = await sniffAllowed(bytes, kind, field);
  const sha256 = sha256Of(bytes);
  const path = pathOf(tenantId, sha256);
  const stored: StoredFile = { sha256, size: bytes.byteLength, mime };
  if (await isIntact(path, sha256)) return stored;
  try {
    await mkdir(dirname(path), { recursive: true });
    await writeFileAtomic(path, Buffer.from(bytes), { mode: 0o600 });
    await syncFolder(dirname(path));
  } catch (cause) {
    throw isFull(cause)
      ? new AppError(
          "UNAVAILABLE",
          "The server has no room for files now. Nothing was kept; send it again later.",
          { cause },
        )
      : cause;
  }
  return stored;
}

/**
 * Keeps what the product itself writes while it is being written, however long: an archive is never whole in memory.
 * When the stream fails nothing is kept.
 */
export async function storeStream(
  tenantId: string,
  source: NodeJS.ReadableStream,
): Promise<{ readonly sha256: string; readonly size: number }> {
  const part = join(folderOf(tenantId), `${randomUUID()}.part`);
  await mkdir(dirname(part), { recursive: true });
  const hash = createHash("sha256");
  let size = 0;
  const counted = new PassThrough();
  counted.on("data", (bytes: Buffer) => {
    hash.update(bytes);
    size += bytes.byteLength;
  });
  try {
    await pipeline(source, counted, createWriteStream(part, { mode: 0o600, flush: true }));
    const sha256 = hash.digest("hex");
    const path = pathOf(tenantId, sha256);
    await mkdir(dirname(path), { recursive: true });
    await rename(part, path);
    await syncFolder(dirname(path));
    return { sha256, size };
  } catch (cause) {
    await rm(part, { force: true });
    throw cause;
  }
}

/**
 * All bytes of a stored file.
 *
 * @throws AppError `NOT_FOUND`; a plain Error when the disk returns other bytes than were stored.
 */
export async function readStoredFile(tenantId: string, sha256: string): Promise<Uint8Array> {
  const bytes = await readFile(pathOf(tenantId, sha256)).catch(missingIsNotFound);
  if (sha256Of(bytes) !== sha256) throw new Error(`The stored file ${sha256} is damaged.`);
  return bytes;
}

/**
 * A stored file as a stream for an HTTP answer, with its size.
 *
 * @throws AppError `NOT_FOUND` before the first byte.
 */
export async function streamStoredFile(
  tenantId: string,
  sha256: string,
): Promise<{ readonly size: number; readonly stream: ReadableStream<Uint8Array> }> {
  const path = pathOf(tenantId, sha256);
  const { size } = await stat(path).catch(missingIsNotFound);
  // Node's stream types and the web's describe the same object in two ways.
  return { size, stream: Readable.toWeb(createReadStream(path)) as ReadableStream<Uint8Array> };
}

/**
 * Deletes a stored file; one that is already gone is no error. The caller makes sure that no other record of
 * the company refers to the same bytes.
 */
export async function deleteStoredFile(tenantId: string, sha256: string): Promise<void> {
  await rm(pathOf(tenantId, sha256), { force: true });
}

/** True when the bytes of this name are there and undamaged. */
export function isStored(tenantId: string, sha256: string): Promise<boolean> {
  return isIntact(pathOf(tenantId, sha256), sha256);
}

/** Deletes every file of a company. */
export async function deleteAllStoredFiles(tenantId: string): Promise<void> {
  await rm(folderOf(tenantId), { recursive: true, force: true });
}

/**
 * Deletes what a killed process left while it was writing: a file gets its name, the hash of its bytes, only when it is
 * whole, so what is named otherwise is nothing that any record can mean. What may still be being written stays.
 *
 * @param before - Only what was last written before this.
 * @returns How many were deleted.
 */
export async function sweepUnnamedFiles(tenantId: string, before: Date): Promise<number> {
  const folder = folderOf(tenantId);
  let swept = 0;
  for (const name of await readdir(folder, { recursive: true }).catch(noneIfMissing)) {
    if (SHA256.test(basename(name))) continue;
    const path = join(folder, name);
    const facts = await stat(path).catch(() => null);
    if (!facts?.isFile() || facts.mtime >= before) continue;
    await rm(path, { force: true });
    swept += 1;
  }
  return swept;
}

function noneIfMissing(error: NodeJS.ErrnoException): readonly never[] {
  if (error.code === "ENOENT") return [];
  throw error;
}

/** The name under which bytes are stored. */
export function sha256Of(bytes: Uint8Array): string {
  return createHash("sha256").update(bytes).digest("hex");
}

const UUID = /^[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}$/i;
const SHA256 = /^[0-9a-f]{64}$/;

/** Both parts are checked, so that neither can lead out of the company's folder. */
function pathOf(tenantId: string, sha256: string): string {
  if (!SHA256.test(sha256)) throw notFound();
  return join(folderOf(tenantId), sha256.slice(0, 2), sha256);
}

function folderOf(tenantId: string): string {
  if (!UUID.test(tenantId)) throw notFound();
  return join(env().DATA_DIR, "files", tenantId.toLowerCase());
}

async function isIntact(path: string, sha256: string): Promise<boolean> {
  const bytes = await readFile(path).catch(() => null);
  return bytes !== null && sha256Of(bytes) === sha256;
}

/** No room, or the quota used up. The half-written file is gone: it never had its name. */
function isFull(error: unknown): boolean {
  return error instanceof Error && "code" in error && ["ENOSPC", "EDQUOT"].includes(String(error.code));
}

/** Without this the renamed name itself may be lost when the power fails. */
async function syncFolder(folder: string): Promise<void> {
  const handle = await open(folder, "r");
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}

function missingIsNotFound(error: NodeJS.ErrnoException): never {
  throw error.code === "ENOENT" ? notFound() : error;
}
