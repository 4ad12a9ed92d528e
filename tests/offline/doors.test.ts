import { createServer, type Server } from "node:http";
import type { AddressInfo } from "node:net";
import { afterEach, expect, test } from "vitest";
import { networkDoors } from "@/lib/offline/doors";
import { withEarlyBundle } from "@/lib/offline/early-bundle";

let server: Server | null = null;
afterEach(() => {
  server?.closeAllConnections();
  server?.close();
});

const ANSWER = {
  inputs: { outdoorDbF: 91 },
  accepted: { outdoorDbF: 91 },
  conflicts: [],
  problems: [],
  waiting: [],
  version: 1,
};
const UPLOAD = {
  clientId: "01900000-0000-4000-8000-000000000001",
  deviceTime: "2026-07-01T12:00:00.000Z",
  fields: { outdoorDbF: { base: null, value: 91 } },
};

type Reply = {
  readonly status: number;
  readonly body: string;
  readonly cutAt?: number;
  readonly location?: string;
};

async function sendTo(reply: Reply | "hang up") {
  const heard: Record<string, string | string[] | undefined>[] = [];
  server = createServer((request, response) => {
    heard.push(request.headers);
    if (reply === "hang up") return void request.socket.destroy();
    const headers = { "content-type": "application/json", "content-length": Buffer.byteLength(reply.body) };
    response.writeHead(reply.status, reply.location ? { ...headers, location: reply.location } : headers);
    if (reply.cutAt === undefined) return void response.end(reply.body);
    response.write(reply.body.slice(0, reply.cutAt));
    setTimeout(() => request.socket.destroy(), 20);
  });
  await new Promise<void>((ready) => server?.listen(0, "127.0.0.1", ready));
  const { port } = server.address() as AddressInfo;
  const doors = networkDoors((path, init) => fetch(`http://127.0.0.1:${port}${path}`, init));
  const answer = await doors.sendFields("company.person", "job", UPLOAD, { fields: 0, photos: 2 }, null);
  return { answer, heard };
}

test("a whole answer counts, and the request says whose data it is", async () => {
  const { answer, heard } = await sendTo({ status: 200, body: JSON.stringify(ANSWER) });
  expect(answer).toMatchObject({ done: true, value: { inputs: ANSWER.inputs, accepted: ANSWER.accepted } });
  expect(heard[0]).toMatchObject({ "x-dewledger-company": "company", "x-dewledger-person": "person" });
});

test.each<readonly [string, Reply | "hang up"]>([
  ["half a body", { status: 200, body: JSON.stringify(ANSWER), cutAt: 30 }],
  ["a body that is whole and something else", { status: 200, body: JSON.stringify({ ok: true }) }],
  ["a page of a hotel's network", { status: 200, body: "<html>Accept our terms</html>" }],
  ["a redirect to such a page", { status: 302, body: "", location: "/terms" }],
  ["500 of something in between", { status: 500, body: JSON.stringify({ error: "upstream" }) }],
  ["503 of a busy office", { status: 503, body: JSON.stringify({ code: "UNAVAILABLE", message: "Busy." }) }],
  ["502 of a proxy", { status: 502, body: "<html>bad gateway</html>" }],
  ["too many tries", { status: 429, body: JSON.stringify({ code: "TOO_MANY_TRIES", message: "Wait." }) }],
  ["a closed connection", "hang up"],
])("%s is no answer: it goes out again later", async (_, reply) => {
  expect((await sendTo(reply)).answer).toMatchObject({ done: false, why: "later" });
});

test.each([
  [401, "NOT_SIGNED_IN", "sign in"],
  [409, "OTHER_PERSON", "other person"],
  [410, "REMOVED", "removed"],
  [410, "HAND_OVER_CLOSED", "closed"],
  [404, "NOT_FOUND", "gone"],
  [422, "INVALID_INPUT", "refused"],
  [500, "UNEXPECTED", "failed"],
])("%i %s is heeded as “%s”", async (status, code, why) => {
  const { answer } = await sendTo({ status, body: JSON.stringify({ code, message: "In words." }) });
  expect(answer).toMatchObject({ done: false, why });
});

test("the first question for the jobs is answered by what the page's head has asked for, once and for nobody else", async () => {
  const asked: unknown[] = [];
  const reply = (name: string) => Promise.resolve(new Response(JSON.stringify({ name })));
  Object.assign(globalThis, { dewledgerFirstBundle: reply("early") });
  const ask = withEarlyBundle((input) => {
    asked.push(input);
    return reply("late");
  });
  const named = async (path: string, headers?: Record<string, string>) =>
    (await (await ask(path, headers ? { headers } : {})).json()).name;
  // Whose data a phone holds is in the headers: an answer for whoever is signed in is none for them.
  expect(await named("/api/field/bundle", { "x-dewledger-person": "ann" })).toBe("late");
  expect(await named("/api/field/bundle")).toBe("early");
  expect(await named("/api/field/bundle")).toBe("late");
  expect(asked).toHaveLength(2);
  // One that never answers does not hold the phone longer than any other.
  Object.assign(globalThis, { dewledgerFirstBundle: new Promise(() => undefined) });
  await expect(ask("/api/field/bundle", { signal: AbortSignal.timeout(5) })).rejects.toThrow();
});
