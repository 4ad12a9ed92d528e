import { expect, test } from "vitest";
import { readBodyUpTo } from "@/lib/server/limited-body";

const TOO_LARGE = { field: "logo", message: "Too large. Send less." };
const post = (body: BodyInit, headers: HeadersInit = {}) =>
  new Request("http://localhost/", { method: "POST", body, headers, duplex: "half" } as RequestInit);

test("returns exactly the bytes that were sent, up to the limit", async () => {
  expect(await readBodyUpTo(post(new Uint8Array([1, 2, 3])), 3, TOO_LARGE)).toEqual(
    new Uint8Array([1, 2, 3]),
  );
  const empty = new Request("http://localhost/", { method: "POST" });
  expect(await readBodyUpTo(empty, 3, TOO_LARGE)).toEqual(new Uint8Array());
});

test("refuses by the announced length without reading", async () => {
  let pulled = 0;
  const body = new ReadableStream({ pull: () => void pulled++ }, { highWaterMark: 0 });
  await expect(readBodyUpTo(post(body, { "content-length": "4" }), 3, TOO_LARGE)).rejects.toMatchObject({
    code: "TOO_LARGE",
    fields: [TOO_LARGE],
  });
  expect(pulled).toBe(0);
});

test("stops an endless body that announces nothing, and lets go of it", async () => {
  let cancelled = false;
  const body = new ReadableStream({
    pull: (controller) => controller.enqueue(new Uint8Array(2)),
    cancel: () => {
      cancelled = true;
    },
  });
  await expect(readBodyUpTo(post(body), 3, TOO_LARGE)).rejects.toMatchObject({ code: "TOO_LARGE" });
  expect(cancelled).toBe(true);
});
