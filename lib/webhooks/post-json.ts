import { lookup } from "node:dns/promises";
import { request } from "node:https";
import { setTimeout as pause } from "node:timers/promises";
import { addressProblem, isPublicAddress } from "./public-address";

export type Posted = { readonly status: number };

/** What stands between this and the network. Tests give their own; nothing else does. */
export type Network = {
  readonly resolve: (
    host: string,
  ) => Promise<readonly { readonly address: string; readonly family: number }[]>;
  readonly mayReach: (address: string) => boolean;
  /** Port and authorities of a test's own server. */
  readonly tls?: { readonly port: number; readonly ca: string };
};

const INTERNET: Network = {
  resolve: (host) => lookup(host, { all: true, order: "verbatim" }),
  mayReach: isPublicAddress,
};

const LONGEST_MS = 10_000;

/** Why a delivery did not arrive, in words that may be shown to the owner. */
export class NotDeliveredError extends Error {
  override readonly name = "NotDeliveredError";
}

/**
 * Posts a body to an address of the open internet. The name is resolved once, every address it has must be public, and the
 * connection goes to the one that was looked at, so that a name which answers otherwise the second time leads nowhere.
 * Redirects are answers like any other. Of the answer only the status is read.
 *
 * @throws {@link NotDeliveredError}
 */
export async function postJson(
  address: string,
  body: string,
  headers: Readonly<Record<string, string>>,
  network: Network = INTERNET,
): Promise<Posted> {
  const problem = addressProblem(address);
  if (problem !== null) throw new NotDeliveredError(problem);
  const url = new URL(address);
  const host = url.hostname.replace(/^\[|\]$/g, "");
  const found = await Promise.race([network.resolve(host).catch(() => []), nothingAfter(LONGEST_MS)]);
  const [pinned] = found;
  if (pinned === undefined) throw new NotDeliveredError(`The name ${host} leads nowhere.`);
  if (!found.every((one) => network.mayReach(one.address)))
    throw new NotDeliveredError(`${host} leads into a network that is not open. It was not called.`);
  return send(url, body, headers, pinned, network.tls);
}

async function nothingAfter(ms: number): Promise<readonly never[]> {
  await pause(ms, undefined, { ref: false });
  return [];
}

function send(
  url: URL,
  body: string,
  headers: Readonly<Record<string, string>>,
  pinned: { readonly address: string; readonly family: number },
  tls: Network["tls"],
): Promise<Posted> {
  return new Promise((resolve, reject) => {
    const refuse = (words: string) => reject(new NotDeliveredError(words));
    const call = request(
      url,
      {
        method: "POST",
        // A connection of its own: one that is kept could have been made to another address.
        agent: false,
        headers: {
          ...headers,
          "content-type": "application/json",
          "content-length": Buffer.byteLength(body),
        },
        lookup: (_host, options, done) =>
          options.all
            ? done(null, [{ address: pinned.address, family: pinned.family }])
            : done(null, pinned.address, pinned.family),
        signal: AbortSignal.timeout(LONGEST_MS),
        ...tls,
      },
      (answer) => {
        resolve({ status: answer.statusCode ?? 0 });
        // Nothing of it is wanted, however long it is.
        answer.destroy();
      },
    );
    call.on("error", (error) =>
      refuse(
        error.name === "AbortError" || error.name === "TimeoutError"
          ? `No answer within ${LONGEST_MS / 1_000} seconds.`
          : `No connection could be made (${codeOf(error)}).`,
      ),
    );
    call.end(body);
  });
}

const codeOf = (error: Error) => ("code" in error ? String(error.code) : error.name);
