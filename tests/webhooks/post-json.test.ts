import { afterEach, expect, test } from "vitest";
import { NotDeliveredError, postJson } from "@/lib/webhooks/post-json";
import { signatureOf } from "@/lib/webhooks/signature";
import { type HookServer, startHookServer } from "../support/hook-server";

let server: HookServer | null = null;
afterEach(async () => {
  await server?.close();
  server = null;
});

const HOOK = "https://hook.example.com/in?a=b";
const ok = () => startHookServer((response) => response.end("fine"));

test("posts the very body, to the address that was looked at, under the name that was given", async () => {
  server = await ok();
  expect(await postJson(HOOK, '{"a":"ü"}', { "x-y": "z" }, server.network)).toEqual({ status: 200 });
  expect(server.heard).toMatchObject([
    {
      method: "POST",
      path: "/in?a=b",
      body: '{"a":"ü"}',
      headers: {
        host: expect.stringMatching(/^hook\.example\.com:\d+$/),
        "x-y": "z",
        "content-type": "application/json",
      },
    },
  ]);
});

test("a redirect is an answer: nobody goes where it leads", async () => {
  server = await startHookServer((response) => {
    response.writeHead(302, { location: "https://hook.example.com/elsewhere" });
    response.end();
  });
  expect(await postJson(HOOK, "{}", {}, server.network)).toEqual({ status: 302 });
  expect(server.heard).toHaveLength(1);
});

test("a name that leads inside is not called, also when only one of its addresses does", async () => {
  server = await ok();
  const inside = [{ address: "127.0.0.1", family: 4 }];
  const mixed = [
    { address: "1.1.1.1", family: 4 },
    { address: "10.0.0.5", family: 4 },
  ];
  const { mayReach: _, ...rest } = server.network;
  const { isPublicAddress: mayReach } = await import("@/lib/webhooks/public-address");
  for (const found of [inside, mixed, [{ address: "::1", family: 6 }]]) {
    const network = { ...rest, mayReach, resolve: async () => found };
    await expect(postJson(HOOK, "{}", {}, network)).rejects.toThrow("not open");
  }
  expect(server.heard).toEqual([]);
});

test("the name is asked once: an answer that changes afterwards leads nowhere", async () => {
  server = await ok();
  let asked = 0;
  const resolve = async () => [{ address: asked++ === 0 ? "127.0.0.1" : "127.0.0.99", family: 4 }];
  await postJson(HOOK, "{}", {}, { ...server.network, resolve });
  expect(asked).toBe(1);
  expect(server.heard).toHaveLength(1);
});

test("where no network is given, this machine cannot be reached", async () => {
  await expect(postJson("https://localhost/", "{}", {})).rejects.toBeInstanceOf(NotDeliveredError);
  await expect(postJson("https://127.0.0.1/", "{}", {})).rejects.toThrow("inside a network");
});

test("a certificate that is not for the name, or of nobody known, is refused", async () => {
  server = await ok();
  await expect(postJson("https://other.example.com/", "{}", {}, server.network)).rejects.toThrow(
    "No connection",
  );
  const { tls, ...rest } = server.network;
  const unknown = { ...rest, tls: { port: tls?.port ?? 0 } as never };
  await expect(postJson(HOOK, "{}", {}, unknown)).rejects.toThrow("No connection");
  expect(server.heard).toEqual([]);
});

test("a name that leads nowhere, and a listener that hangs up, are said in words", async () => {
  server = await startHookServer((_, request) => request.socket.destroy());
  await expect(postJson(HOOK, "{}", {}, server.network)).rejects.toThrow(
    "No connection could be made (ECONNRESET)",
  );
  const nowhere = { ...server.network, resolve: async () => [] };
  await expect(postJson(HOOK, "{}", {}, nowhere)).rejects.toThrow("leads nowhere");
});

test("an endless answer is not read", async () => {
  server = await startHookServer((response) => {
    response.writeHead(200);
    const more = setInterval(() => response.write("x".repeat(65_536)), 1);
    response.on("close", () => clearInterval(more));
  });
  expect(await postJson(HOOK, "{}", {}, server.network)).toEqual({ status: 200 });
});

/** RFC 4231, test case 2 (recalled): key "Jefe", data "what do ya want for nothing?". */
const SOURCE = "RFC 4231 test case 2, HMAC-SHA-256 (recalled)";
test(`the signature is an HMAC as others compute it: ${SOURCE}`, async () => {
  const { createHmac } = await import("node:crypto");
  expect(createHmac("sha256", "Jefe").update("what do ya want for nothing?").digest("hex")).toBe(
    "5bdcc146bf60754e6a042426089575c75a003f089d2739839dec58b964ec3843",
  );
  // By hand: `printf '1700000000.{}' | openssl dgst -sha256 -hmac secret`
  expect(signatureOf("secret", "{}", 1_700_000_000)).toBe(
    `signed-at=1700000000; sha256=b8569b78799ff9e3cbff0fc2d63a33a2b57f3282abd07c37ae5e8e7d79a5f163`,
  );
});
