import { createServer, request as forward, type IncomingMessage, type ServerResponse } from "node:http";

export const FAULTS = [
  "none",
  "dropped before",
  "dropped after",
  "delayed",
  "500 before",
  "500 after",
  "answer cut",
  "upload cut",
  "twice",
] as const;
export type Fault = (typeof FAULTS)[number];

/**
 * Stands between a phone and the application and spoils what passes: `before` the application has seen it or
 * `after` it has acted, so that the phone cannot know which.
 */
export async function startFaultProxy(target: string, next: () => Fault) {
  const seen = new Map<Fault, number>();
  const server = createServer((request, response) => {
    const fault = next();
    seen.set(fault, (seen.get(fault) ?? 0) + 1);
    void pass(target, fault, request, response).catch(() => response.destroy());
  });
  await new Promise<void>((resolve) => server.listen(0, "127.0.0.1", resolve));
  const at = server.address();
  if (at === null || typeof at === "string") throw new Error("The proxy has no port.");
  return {
    address: `http://127.0.0.1:${at.port}`,
    /** How often each fault happened. */
    seen,
    stop: () =>
      new Promise<void>((resolve) => {
        server.closeAllConnections();
        server.close(() => resolve());
      }),
  };
}

async function pass(target: string, fault: Fault, request: IncomingMessage, response: ServerResponse) {
  const chunks: Buffer[] = [];
  for await (const chunk of request) chunks.push(chunk);
  const body = Buffer.concat(chunks);
  if (fault === "dropped before") return void response.destroy();
  if (fault === "500 before") return void response.writeHead(500).end("broken");
  if (fault === "delayed") await new Promise((resolve) => setTimeout(resolve, 150));
  if (fault === "upload cut" && body.length > 1) {
    await ask(target, request, body.subarray(0, body.length >> 1), true).catch(() => null);
    return void response.destroy();
  }
  if (fault === "twice") void ask(target, request, body).catch(() => null);
  const answer = await ask(target, request, body);
  if (fault === "dropped after") return void response.destroy();
  if (fault === "500 after") return void response.writeHead(500).end("broken");
  response.writeHead(answer.status, { "content-type": answer.type, "content-length": answer.body.length });
  if (fault !== "answer cut") return void response.end(answer.body);
  response.write(answer.body.subarray(0, answer.body.length >> 1), () => response.destroy());
}

/** Hands a request on. Half of one announces its whole length and then ends the connection. */
function ask(target: string, from: IncomingMessage, body: Buffer, isHalf = false) {
  return new Promise<{ readonly status: number; readonly type: string; readonly body: Buffer }>(
    (resolve, reject) => {
      const {
        host: _,
        connection: _c,
        "transfer-encoding": _t,
        "accept-encoding": _a,
        ...headers
      } = from.headers;
      const length = isHalf ? body.length * 2 : body.length;
      const out = forward(`${target}${from.url}`, {
        method: from.method,
        headers: { ...headers, "content-length": length },
      });
      out.once("error", reject);
      out.once("response", (answer) => {
        const parts: Buffer[] = [];
        answer.on("data", (part: Buffer) => parts.push(part));
        answer.once("error", reject);
        answer.once("end", () =>
          resolve({
            status: answer.statusCode ?? 500,
            type: answer.headers["content-type"] ?? "text/plain",
            body: Buffer.concat(parts),
          }),
        );
      });
      if (isHalf) out.write(body, () => setTimeout(() => out.destroy(new Error("cut")), 20));
      else out.end(body);
    },
  );
}
