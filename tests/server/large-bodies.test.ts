import { expect, test } from "vitest";
import { takingBody } from "@/lib/server/large-bodies";

const LARGE = { "content-length": String(20 * 1024 * 1024) };
const sent = (headers: HeadersInit, method = "POST") =>
  new Request("http://localhost/", { method, headers, ...(method === "GET" ? {} : { body: "x" }) });

/** Begins work that runs until it is told to end. */
function begin(request: Request, who: string) {
  let end = (): void => undefined;
  const work = () =>
    new Promise<string>((resolve) => {
      end = () => resolve("taken");
    });
  const taken = takingBody(request, who, work).catch((error: { code: string }) => error.code);
  return { taken, end: () => end() };
}

test("of one person three large bodies are taken at once, of others theirs", async () => {
  const three = [1, 2, 3].map(() => begin(sent(LARGE), "ann"));
  // A body of unknown length is a large one.
  for (const headers of [LARGE, {}, { "content-length": "NaN" }])
    expect(await begin(sent(headers), "ann").taken).toBe("UNAVAILABLE");
  const others = begin(sent(LARGE), "bo");
  others.end();
  expect(await others.taken).toBe("taken");
  three[0]?.end();
  expect(await three[0]?.taken).toBe("taken");
  const next = begin(sent(LARGE), "ann");
  for (const one of [...three, next]) one.end();
  expect(await next.taken).toBe("taken");
});

test("what fails gives its place back", async () => {
  for (let time = 0; time < 5; time++)
    await expect(takingBody(sent(LARGE), "cy", () => Promise.reject(new Error("cut off")))).rejects.toThrow(
      "cut off",
    );
});

test("forms, pictures of phones and questions are never counted", async () => {
  const many = Array.from({ length: 20 }, (_, at) =>
    begin(at % 2 === 0 ? sent({ "content-length": "400000" }) : sent({}, "GET"), "di"),
  );
  for (const one of many) one.end();
  expect(await Promise.all(many.map((one) => one.taken))).toEqual(many.map(() => "taken"));
});
