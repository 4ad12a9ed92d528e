import { POST as addCallback, GET as listCallbacks } from "@/app/api/v1/callbacks/route";
import { GET as readFindings } from "@/app/api/v1/jobs/[jobId]/findings/route";
import { GET as readLedger } from "@/app/api/v1/jobs/[jobId]/ledger/route";
import { GET as followLog } from "@/app/api/v1/jobs/[jobId]/logs/[workId]/route";
import { POST as sendLog } from "@/app/api/v1/jobs/[jobId]/logs/route";
import { GET as listPackets } from "@/app/api/v1/jobs/[jobId]/packets/route";
import { GET as listJobs } from "@/app/api/v1/jobs/route";

export const API = {
  listJobs,
  readLedger,
  readFindings,
  listPackets,
  listCallbacks,
  addCallback,
  sendLog,
  followLog,
};

type Call = {
  readonly params?: Readonly<Record<string, string>>;
  readonly query?: Readonly<Record<string, string>>;
  readonly headers?: Readonly<Record<string, string>>;
  readonly body?: string;
};

export type ApiAnswer = {
  readonly status: number;
  readonly headers: Headers;
  readonly text: string;
  // biome-ignore lint/suspicious/noExplicitAny: a test looks at what it expects
  readonly json: any;
};

/** Calls a door of the API as a program with a token would. */
export async function callApi(door: keyof typeof API, token: string, call: Call = {}): Promise<ApiAnswer> {
  const url = `http://localhost/?${new URLSearchParams(call.query)}`;
  const method = API[door].facts.endpoint.method;
  const headers = { authorization: `Bearer ${token}`, ...call.headers };
  const request = new Request(url, {
    method,
    headers,
    ...(call.body === undefined ? {} : { body: call.body }),
  });
  const answer = await API[door](request, { params: Promise.resolve(call.params) });
  const text = await answer.text();
  return {
    status: answer.status,
    headers: answer.headers,
    text,
    json: text === "" ? null : JSON.parse(text),
  };
}
