import { afterEach, expect, test, vi } from "vitest";
import { isHeic, shrinkPhoto } from "@/lib/offline/shrink-photo";

afterEach(() => vi.unstubAllGlobals());

/** The first box of a file: its length, "ftyp" and the brand (ISO/IEC 14496-12, 4.3), then something. */
const startingWith = (brand: string) =>
  new Uint8Array([0, 0, 0, 24, ...new TextEncoder().encode(`ftyp${brand}`), 0, 0, 0, 0, 1, 2, 3, 4]);

test("a HEIC picture is told by its content", () => {
  expect(isHeic(startingWith("heic"))).toBe(true);
  expect(isHeic(startingWith("heix"))).toBe(true);
  expect(isHeic(startingWith("mp42"))).toBe(false);
  expect(isHeic(new Uint8Array([0xff, 0xd8, 0xff]))).toBe(false);
});

test("a HEIC picture this browser cannot draw stays as it came; anything else it cannot draw is refused", async () => {
  vi.stubGlobal("createImageBitmap", () => Promise.reject(new DOMException("no", "InvalidStateError")));
  const heic = startingWith("heic");
  const kept = await shrinkPhoto(new Blob([heic]));
  expect(kept.type).toBe("image/heic");
  expect(new Uint8Array(await kept.bytes.arrayBuffer())).toEqual(heic);
  await expect(shrinkPhoto(new Blob(["no picture at all"]))).rejects.toThrow(/cannot|not a picture/);
});
