import { headersOfTab } from "@/components/shell/tab-owner";
import type { FieldProblem } from "@/lib/domain/problems";

export type LogAnswer =
  | { readonly kind: "done"; readonly words: string }
  | { readonly kind: "refused"; readonly message: string; readonly fields: readonly FieldProblem[] }
  | { readonly kind: "cancelled" };

/** How far it is: first the file goes, then the server reads it. */
export type LogProgress = { readonly part: "sent" | "read"; readonly share: number };

type Told = { readonly progress: (at: LogProgress) => void; readonly signal: AbortSignal };
type Sent = { readonly kind: "sent"; readonly workId: string };

const FIRST_ASK_MS = 150;
const LAST_ASK_MS = 1_500;

/** Sends a log file and follows its reading to the end. Given up meanwhile, nothing of it is kept. */
export async function sendLog(jobId: string, form: FormData, told: Told): Promise<LogAnswer> {
  const sent = await upload(jobId, form, told);
  return sent.kind === "sent" ? follow(`/api/jobs/${jobId}/logs/work/${sent.workId}`, told) : sent;
}

/** Not `fetch`, which cannot tell how much has gone. */
function upload(jobId: string, form: FormData, told: Told): Promise<LogAnswer | Sent> {
  return new Promise((resolve) => {
    const request = new XMLHttpRequest();
    const refused = (message: string, fields: readonly FieldProblem[] = []) =>
      resolve({ kind: "refused", message, fields });
    request.upload.onprogress = ({ loaded, total, lengthComputable }) => {
      if (lengthComputable) told.progress({ part: "sent", share: loaded / total });
    };
    request.onabort = () => resolve({ kind: "cancelled" });
    request.onerror = () =>
      refused("The file did not reach the server. Try again when the connection is back.");
    request.onload = () => {
      try {
        const answer = JSON.parse(request.responseText);
        if (request.status === 200) resolve({ kind: "sent", workId: answer.workId });
        else refused(answer.message, answer.fields ?? []);
      } catch {
        refused(
          "The server’s answer could not be read. Look whether the log is listed, and try again if not.",
        );
      }
    };
    told.signal.addEventListener("abort", () => request.abort());
    const path = `/api/jobs/${jobId}/logs`;
    request.open("POST", path);
    for (const [name, value] of Object.entries(headersOfTab(path))) request.setRequestHeader(name, value);
    request.send(form);
  });
}

/** Asks again in growing pauses, so that a short file is there at once and a long one asks little. */
async function follow(address: string, { progress, signal }: Told): Promise<LogAnswer> {
  for (let pauseMs = FIRST_ASK_MS; ; pauseMs = Math.min(LAST_ASK_MS, 1.4 * pauseMs)) {
    if (signal.aborted) await fetch(address, { method: "DELETE" }).catch(() => null);
    const now = await state(address);
    if (now !== null) {
      progress({ part: "read", share: now.share });
      if (now.state === "done") return { kind: "done", words: now.message };
      if (now.state === "cancelled") return { kind: "cancelled" };
      if (now.state === "failed") return { kind: "refused", message: now.message, fields: now.fields };
    }
    await new Promise((wake) => {
      const timer = setTimeout(wake, pauseMs);
      signal.addEventListener("abort", () => {
        clearTimeout(timer);
        wake(null);
      });
    });
  }
}

type Progress = {
  readonly state: string;
  readonly share: number;
  readonly message: string;
  readonly fields: readonly FieldProblem[];
};

/** `null` while the server cannot be reached: the reading goes on without being watched. */
async function state(address: string): Promise<Progress | null> {
  try {
    const answer = await fetch(address);
    if (answer.ok) return await answer.json();
    const { message } = await answer.json();
    return answer.status >= 500 ? null : { state: "failed", share: 0, message, fields: [] };
  } catch {
    return null;
  }
}
