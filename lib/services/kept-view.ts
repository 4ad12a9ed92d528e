import { createHash } from "node:crypto";
import { promisify } from "node:util";
import { gunzip, gzip } from "node:zlib";
import { readStoredFile, sha256Of, storeFile } from "@/lib/files/store";
import type { PrintedView } from "@/lib/reports/render-view";

const shrink = promisify(gzip);
const unfold = promisify(gunzip);

/** Stands for the bytes of a picture, which are a stored file of their own. */
const PICTURE = "$file";

/**
 * Keeps everything that a packet prints, so that it can be printed again from this alone.
 *
 * @returns The name of the stored file.
 */
export async function keepView(tenantId: string, view: PrintedView): Promise<string> {
  const bytes = await shrink(Buffer.from(textOf(view)));
  return (await storeFile(tenantId, new Uint8Array(bytes), "view", "packet")).sha256;
}

/** What {@link keepView} kept, with its pictures read back. */
export async function readView(tenantId: string, name: string): Promise<PrintedView> {
  const text = (await unfold(await readStoredFile(tenantId, name))).toString("utf8");
  const kept: unknown = JSON.parse(text);
  const pictures = new Map<string, Uint8Array>();
  for (const picture of picturesIn(kept)) pictures.set(picture, await readStoredFile(tenantId, picture));
  return withPictures(kept, pictures) as PrintedView;
}

/** What two views are compared by. */
export function hashOfView(view: PrintedView): string {
  return createHash("sha256").update(textOf(view)).digest("hex");
}

function textOf(view: PrintedView): string {
  return JSON.stringify(view, (_, value) =>
    value instanceof Uint8Array ? { [PICTURE]: sha256Of(value) } : value,
  );
}

function picturesIn(value: unknown): readonly string[] {
  const own = pictureName(value);
  if (own !== null) return [own];
  return isObject(value) ? Object.values(value).flatMap(picturesIn) : [];
}

function withPictures(value: unknown, pictures: ReadonlyMap<string, Uint8Array>): unknown {
  const own = pictureName(value);
  if (own !== null) return pictures.get(own);
  if (Array.isArray(value)) return value.map((one) => withPictures(one, pictures));
  if (!isObject(value)) return value;
  return Object.fromEntries(Object.entries(value).map(([key, one]) => [key, withPictures(one, pictures)]));
}

function pictureName(value: unknown): string | null {
  return isObject(value) && typeof value[PICTURE] === "string" ? value[PICTURE] : null;
}

function isObject(value: unknown): value is Readonly<Record<string, unknown>> {
  return typeof value === "object" && value !== null;
}
