"use client";

import { useRouter } from "next/navigation";
import { useRef, useState } from "react";
import { Button } from "@/components/ui/button";
import { Card } from "@/components/ui/card";
import { Notice } from "@/components/ui/notice";
import type { JobFile } from "@/lib/domain/field-bundle";

type Props = {
  readonly jobId: string;
  readonly reports: readonly JobFile[];
  readonly mayEdit: boolean;
};

const OFFLINE = "The server did not answer. Nothing was changed; try again when there is a connection.";

/** The designer's own report, kept beside the numbers that were taken from it. */
export function DesignReports({ jobId, reports, mayEdit }: Props) {
  const router = useRouter();
  const input = useRef<HTMLInputElement>(null);
  const [busy, setBusy] = useState<string | null>(null);
  const [said, say] = useState<{ readonly kind: "done" | "problem"; readonly title: string } | null>(null);
  const ask = async (what: string, done: string, address: string, init: RequestInit) => {
    setBusy(what);
    say(null);
    try {
      const response = await fetch(`/api/jobs/${jobId}/reports${address}`, init);
      const answer = response.ok ? null : await response.json();
      say(answer === null ? { kind: "done", title: done } : { kind: "problem", title: problemIn(answer) });
      if (response.ok) router.refresh();
    } catch {
      say({ kind: "problem", title: OFFLINE });
    }
    setBusy(null);
  };
  const send = async (file: File | undefined) => {
    if (!file) return;
    const body = new FormData();
    body.set("file", file);
    await ask("send", `${file.name} is kept with the job.`, "", { method: "POST", body });
    if (input.current) input.current.value = "";
  };
  return (
    <Card title="The designer’s report">
      {reports.length === 0 ? <p className="text-sm text-muted">None is attached yet.</p> : null}
      <ul className="grid gap-2">
        {reports.map((report) => (
          <li key={report.id} className="flex flex-wrap items-baseline gap-x-3 gap-y-1">
            <a className="text-link break-all" href={`/api/jobs/${jobId}/reports/${report.id}`} download>
              {report.fileName}
            </a>
            <span className="text-sm text-muted">
              {sizeText(report.sizeBytes)} · {report.addedByName} · {report.addedAt.slice(0, 10)}
            </span>
            {mayEdit ? (
              <Button
                variant="quiet"
                aria-label={`Remove ${report.fileName}`}
                disabled={busy !== null}
                onClick={() =>
                  ask(report.id, `${report.fileName} was removed.`, `/${report.id}`, { method: "DELETE" })
                }
              >
                Remove
              </Button>
            ) : null}
          </li>
        ))}
      </ul>
      {mayEdit ? (
        <label className="mt-3 grid justify-items-start gap-1 text-sm">
          <span className="font-semibold">{busy === "send" ? "Sending…" : "Attach a PDF, up to 30 MB"}</span>
          <input
            ref={input}
            type="file"
            accept="application/pdf,.pdf"
            className="control max-w-full"
            disabled={busy !== null}
            onChange={(event) => void send(event.currentTarget.files?.[0])}
          />
        </label>
      ) : null}
      {said === null ? null : <Notice kind={said.kind} title={said.title} className="mt-3" />}
    </Card>
  );
}

function problemIn(answer: {
  readonly message: string;
  readonly fields?: readonly { readonly message: string }[];
}): string {
  return answer.fields?.[0]?.message ?? answer.message;
}

function sizeText(bytes: number): string {
  return bytes < 1_000_000 ? `${Math.ceil(bytes / 1_000)} kB` : `${(bytes / 1_000_000).toFixed(1)} MB`;
}
