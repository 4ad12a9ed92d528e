import { readFileSync } from "node:fs";
import path from "node:path";

const MANIFEST = path.resolve(import.meta.dirname, "../../.next/server/server-reference-manifest.json");

/** What an action answered. */
export type ActionAnswer = {
  readonly ok: boolean;
  readonly value?: unknown;
  readonly code?: string;
  readonly message?: string;
};

/** Signs in as the sign-in page does and answers the cookies of the session. */
export async function signInOverHttp(address: string, email: string, password: string): Promise<string> {
  const first = await fetch(`${address}/api/auth/csrf`);
  const { csrfToken } = (await first.json()) as { csrfToken: string };
  const answer = await fetch(`${address}/api/auth/callback/credentials`, {
    method: "POST",
    redirect: "manual",
    headers: { "content-type": "application/x-www-form-urlencoded", cookie: cookiesOf(first) },
    body: new URLSearchParams({ csrfToken, email, password, json: "true", callbackUrl: "/" }),
  });
  const cookies = cookiesOf(answer);
  if (!answer.ok || !/session-token=/.test(cookies)) throw new Error(`${email} could not sign in.`);
  return cookies;
}

/**
 * Calls a server action of the built application as its pages do: a POST to a page that uses it, with the
 * action's id from the build and its input as JSON. The answer is row 1 of what comes back.
 *
 * @throws Error when no answer arrived, so that nobody knows whether the action ran.
 */
export async function callAction(call: {
  readonly address: string;
  readonly page: string;
  readonly cookie: string;
  readonly file: string;
  readonly name: string;
  readonly input: unknown;
}): Promise<ActionAnswer> {
  const response = await fetch(`${call.address}${call.page}`, {
    method: "POST",
    redirect: "manual",
    headers: {
      accept: "text/x-component",
      "content-type": "text/plain;charset=UTF-8",
      "next-action": actionId(call.file, call.name),
      origin: call.address,
      cookie: call.cookie,
    },
    body: JSON.stringify([call.input]),
  });
  const row = /^1:(\{.*\})$/m.exec(await response.text())?.[1];
  if (row === undefined) throw new Error(`${call.name} answered ${response.status} without its result.`);
  return JSON.parse(row) as ActionAnswer;
}

function actionId(file: string, name: string): string {
  const { node } = JSON.parse(readFileSync(MANIFEST, "utf8")) as {
    node: Record<string, { exportedName: string; filename: string }>;
  };
  const found = Object.entries(node).find(([, one]) => one.filename === file && one.exportedName === name);
  if (!found) throw new Error(`The build has no action ${name} of ${file}.`);
  return found[0];
}

function cookiesOf(response: Response): string {
  return response.headers
    .getSetCookie()
    .map((one) => one.split(";", 1)[0])
    .join("; ");
}
