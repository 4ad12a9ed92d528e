import { expect, test } from "vitest";
import { readUpload } from "@/lib/server/upload";

const MiB = 1_048_576;
const BOUNDARY = "----------boundary";
const HEAD = `--${BOUNDARY}\r\ncontent-disposition: form-data; name="file"; filename="log.csv"\r\ncontent-type: text/csv\r\n\r\n`;
const TAIL = `\r\n--${BOUNDARY}--\r\n`;

/** A multipart upload that sends `chunks` of 64 KB and counts how many were asked for. */
function upload(chunks: number, headers: Readonly<Record<string, string>> = {}) {
  const seen = { pulled: 0, cancelled: false };
  const body = new ReadableStream<Uint8Array>(
    {
      pull: (controller) => {
        seen.pulled += 1;
        if (seen.pulled === 1) controller.enqueue(new TextEncoder().encode(HEAD));
        else if (seen.pulled <= chunks + 1) controller.enqueue(new Uint8Array(65_536).fill(0x31));
        else {
          controller.enqueue(new TextEncoder().encode(TAIL));
          controller.close();
        }
      },
      cancel: () => {
        seen.cancelled = true;
      },
    },
    { highWaterMark: 0 },
  );
  const request = new Request("http://localhost/", {
    method: "POST",
    headers: { "content-type": `multipart/form-data; boundary=${BOUNDARY}`, ...headers },
    body,
    duplex: "half",
  } as RequestInit);
  return { request, seen };
}

test("a file below the limit arrives whole, whatever was announced", async () => {
  const announced: readonly Record<string, string>[] = [{}, { "content-length": "1" }];
  for (const headers of announced) {
    const { request } = upload(10, headers);
    const { file } = await readUpload(request, "file", MiB);
    expect([file.size, file.name]).toEqual([655_360, "log.csv"]);
  }
});

test("an announced 200 MB is refused before a byte is read, naming the field and the limit", async () => {
  const { request, seen } = upload(3_200, { "content-length": String(200 * MiB) });
  await expect(readUpload(request, "file", 60 * MiB)).rejects.toMatchObject({
    code: "TOO_LARGE",
    fields: [{ field: "file" }],
    message: expect.stringContaining("60 MB"),
  });
  expect(seen.pulled).toBe(0);
});

test.each<[string, Record<string, string>]>([
  ["nothing is announced", {}],
  ["a lie is announced", { "content-length": "1000" }],
  ["no number is announced", { "content-length": "many" }],
])("when %s, reading stops soon after the limit", async (_, headers) => {
  const { request, seen } = upload(3_200, headers);
  await expect(readUpload(request, "file", MiB)).rejects.toMatchObject({
    code: "TOO_LARGE",
    fields: [{ field: "file" }],
  });
  // 1 MB is 16 chunks of 64 KB; beside it the form may have one more, and a few wait between the streams.
  expect(seen.pulled).toBeLessThan(30);
  expect(seen.cancelled).toBe(true);
});

test("a file that is a little too large for the limit, yet within what a form may add, is refused too", async () => {
  const { request } = upload(16);
  await expect(readUpload(request, "file", MiB - 1)).rejects.toMatchObject({ code: "TOO_LARGE" });
});

test.each([
  ["an empty file", upload(0).request],
  ["a form without the field", new Request("http://localhost/", { method: "POST", body: new FormData() })],
  ["no form at all", new Request("http://localhost/", { method: "POST", body: "time,rh\n" })],
  ["no body", new Request("http://localhost/", { method: "POST" })],
])("%s is refused naming the field", async (_, request) => {
  await expect(readUpload(request, "file", MiB)).rejects.toMatchObject({
    code: "INVALID_INPUT",
    fields: [{ field: "file" }],
  });
});

test("an upload that breaks off is refused, not taken for a shorter file", async () => {
  const body = new ReadableStream<Uint8Array>({
    start: (controller) => {
      controller.enqueue(new TextEncoder().encode(`${HEAD}2026-07-01 00:00,75,50`));
      controller.close();
    },
  });
  const request = new Request("http://localhost/", {
    method: "POST",
    headers: { "content-type": `multipart/form-data; boundary=${BOUNDARY}` },
    body,
    duplex: "half",
  } as RequestInit);
  await expect(readUpload(request, "file", MiB)).rejects.toMatchObject({
    code: "INVALID_INPUT",
    fields: [{ field: "file" }],
  });
});
