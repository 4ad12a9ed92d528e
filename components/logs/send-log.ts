import type { FieldProblem } from "@/lib/domain/problems";

export type LogAnswer =
  | {
      readonly kind: "done";
      readonly rowsKept: number;
      readonly rowsRefused: number;
      readonly overlap: number;
      readonly isStation: boolean;
    }
  | { readonly kind: "refused"; readonly message: string; readonly fields: readonly FieldProblem[] }
  | { readonly kind: "cancelled" };

/** Sends a log file, telling how much has gone. Not `fetch`, which cannot tell that. */
export function sendLog(
  jobId: string,
  form: FormData,
  told: { readonly progress: (share: number) => void; readonly signal: AbortSignal },
): Promise<LogAnswer> {
  return new Promise((resolve) => {
    const request = new XMLHttpRequest();
    const refused = (message: string, fields: readonly FieldProblem[] = []) =>
      resolve({ kind: "refused", message, fields });
    request.upload.onprogress = ({ loaded, total, lengthComputable }) => {
      if (lengthComputable) told.progress(loaded / total);
    };
    request.onabort = () => resolve({ kind: "cancelled" });
    request.onerror = () =>
      refused("The file did not reach the server. Try again when the connection is back.");
    request.onload = () => {
      try {
        const answer = JSON.parse(request.responseText);
        if (request.status === 200) resolve({ kind: "done", ...answer });
        else refused(answer.message, answer.fields ?? []);
      } catch {
        refused(
          "The server’s answer could not be read. Look whether the log is listed, and try again if not.",
        );
      }
    };
    told.signal.addEventListener("abort", () => request.abort());
    request.open("POST", `/api/jobs/${jobId}/logs`);
    request.send(form);
  });
}
