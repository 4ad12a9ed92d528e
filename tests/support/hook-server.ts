import { readFileSync } from "node:fs";
import type { IncomingHttpHeaders, IncomingMessage, ServerResponse } from "node:http";
import { createServer } from "node:https";
import type { AddressInfo } from "node:net";
import type { Network } from "@/lib/webhooks/post-json";

const file = (name: string) => readFileSync(new URL(`../fixtures/tls/${name}`, import.meta.url), "utf8");

export type Heard = {
  readonly method: string;
  readonly path: string;
  readonly headers: IncomingHttpHeaders;
  readonly body: string;
};

export type HookServer = {
  readonly heard: Heard[];
  /** A network in which `hook.example.com` is this server, and this server may be reached. */
  readonly network: Network;
  readonly close: () => Promise<void>;
};

/** A listener with a certificate of its own, as somebody's program is one. */
export async function startHookServer(
  answer: (response: ServerResponse, request: IncomingMessage) => void,
): Promise<HookServer> {
  const heard: Heard[] = [];
  const server = createServer(
    { key: file("key.pem"), cert: file("certificate.pem") },
    (request, response) => {
      const parts: Buffer[] = [];
      request.on("data", (part: Buffer) => parts.push(part));
      request.on("end", () => {
        const { method = "", url: path = "", headers } = request;
        heard.push({ method, path, headers, body: Buffer.concat(parts).toString("utf8") });
        answer(response, request);
      });
    },
  );
  await new Promise<void>((listening) => server.listen(0, "127.0.0.1", listening));
  const { port } = server.address() as AddressInfo;
  return {
    heard,
    network: {
      resolve: async () => [{ address: "127.0.0.1", family: 4 }],
      mayReach: (address) => address === "127.0.0.1",
      tls: { port, ca: file("certificate.pem") },
    },
    close: () =>
      new Promise((closed) => {
        server.closeAllConnections();
        server.close(() => closed());
      }),
  };
}
