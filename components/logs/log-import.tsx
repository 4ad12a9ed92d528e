"use client";

import { useRouter } from "next/navigation";
import { type DragEvent, useRef, useState } from "react";
import { ActionForm } from "@/components/forms/action-form";
import { ErrorSummary, problemOf } from "@/components/forms/error-summary";
import { FieldFrame, fieldIds } from "@/components/forms/field-frame";
import { Button } from "@/components/ui/button";
import { Notice } from "@/components/ui/notice";
import { SubmitButton } from "@/components/ui/submit-button";
import { TextField } from "@/components/ui/text-field";
import type { FieldProblem } from "@/lib/domain/problems";
import { tryMapping } from "@/lib/schemas/log-file";
import { type ChosenLog, chosenLog } from "./chosen-log";
import type { LogSourceData } from "./log-data";
import { MappingFields, mappingIn } from "./mapping-fields";
import { PreviewTable } from "./preview-table";
import { type LogProgress, sendLog } from "./send-log";

const NEEDED = "Choose a file.";

/** Takes a log: drop it, look over which column is which, send it. What is chosen is remembered for the logger's next file. */
export function LogImport({
  jobId,
  sources,
  timeZone,
}: {
  readonly jobId: string;
  readonly sources: readonly LogSourceData[];
  readonly timeZone: string;
}) {
  const router = useRouter();
  const [chosen, setChosen] = useState<ChosenLog | null>(null);
  const [problems, setProblems] = useState<readonly FieldProblem[]>([]);
  const [tried, setTried] = useState<{ readonly ok: boolean; readonly words: readonly string[] } | null>(
    null,
  );
  const [at, setAt] = useState<LogProgress | null>(null);
  const [done, setDone] = useState<string | null>(null);
  const sending = useRef<AbortController | null>(null);
  const form = useRef<HTMLDivElement>(null);

  const choose = async (file: File | undefined) => {
    setDone(null);
    setTried(null);
    setProblems([]);
    setChosen(null);
    if (!file) return;
    const found = await chosenLog(file, sources);
    if (typeof found === "string") return setProblems([{ field: "file", message: found }]);
    setChosen(found);
    const { known, mapping, start } = found;
    const zone = known?.timeZone ?? timeZone;
    if (mapping) setTried(tryMapping(start, { zone, mapping }));
  };
  const drop = (event: DragEvent) => {
    event.preventDefault();
    void choose(event.dataTransfer.files[0]);
  };
  const tryOut = () => {
    const element = form.current?.closest("form");
    if (!chosen || !element) return;
    const sent = new FormData(element);
    const mapping = mappingIn(sent, chosen.preview);
    const zone = String(sent.get("timeZone") ?? "");
    setTried(
      typeof mapping === "string"
        ? { ok: false, words: [mapping] }
        : tryMapping(chosen.start, { zone, mapping }),
    );
  };
  const send = async (sent: FormData) => {
    if (!chosen) return setProblems([{ field: "file", message: NEEDED }]);
    const mapping = mappingIn(sent, chosen.preview);
    if (typeof mapping === "string") return setProblems([{ field: "mapping", message: mapping }]);
    const body = new FormData();
    body.set("file", chosen.file);
    body.set("sourceName", String(sent.get("sourceName") ?? ""));
    body.set("timeZone", String(sent.get("timeZone") ?? ""));
    body.set("mapping", JSON.stringify(mapping));
    const control = new AbortController();
    sending.current = control;
    setAt({ part: "sent", share: 0 });
    const answer = await sendLog(jobId, body, { progress: setAt, signal: control.signal });
    setAt(null);
    if (answer.kind === "cancelled") {
      setProblems([]);
      return setDone("Cancelled; nothing was kept.");
    }
    if (answer.kind === "refused") {
      setProblems(answer.fields.length > 0 ? answer.fields : [{ field: "file", message: answer.message }]);
      return;
    }
    setDone(answer.words);
    setChosen(null);
    setProblems([]);
    router.refresh();
  };
  const fileProps = {
    name: "file",
    label: "Log file",
    hint: "Drop it here or choose it: CSV, TSV or a ZIP of them, up to 50 MB. A weather station’s file goes the same way.",
    error: problemOf(problems, "file"),
  };
  return (
    <ActionForm
      // Not awaited: what an awaited action sets is shown when it ends, and a progress bar then is none.
      action={(sent) => void send(sent)}
      className="grid gap-3 border-t border-rule pt-4"
    >
      <h3 className="font-semibold">Add a log</h3>
      {done ? <Notice kind="done" title={done} /> : null}
      <ErrorSummary title="Not imported yet" problems={problems} />
      {/* biome-ignore lint/a11y/noStaticElementInteractions: dropping is a second way; the field inside is the first */}
      <div
        ref={form}
        onDragOver={(event) => event.preventDefault()}
        onDrop={drop}
        className="border border-dashed border-rule p-3"
      >
        <FieldFrame {...fileProps}>
          <input
            type="file"
            name="file"
            accept=".csv,.tsv,.txt,.zip,text/csv"
            id={fieldIds(fileProps).input}
            className="control"
            aria-describedby={fieldIds(fileProps).describedBy}
            onChange={(event) => choose(event.target.files?.[0])}
          />
        </FieldFrame>
      </div>
      {chosen ? (
        <div key={chosen.key} className="grid gap-4">
          <p className="text-sm">
            {chosen.known
              ? `These headings are known from “${chosen.known.name}”; its columns are chosen.`
              : chosen.mapping
                ? "New headings: the columns below are guessed from names and values. Look them over."
                : "New headings that do not tell what they are. Choose the columns."}
          </p>
          <PreviewTable preview={chosen.preview} />
          <TextField
            name="sourceName"
            label="Logger"
            hint="The name under which its columns are remembered; one name for each sensor of the home."
            defaultValue={chosen.known?.name ?? "Hall sensor"}
            error={problemOf(problems, "sourceName")}
          />
          <MappingFields
            preview={chosen.preview}
            mapping={chosen.mapping}
            timeZone={chosen.known?.timeZone ?? timeZone}
          />
          {tried ? (
            <Notice
              kind={tried.ok ? "information" : "problem"}
              title={tried.ok ? "So it would be read" : "Not readable like this yet"}
            >
              <ul>
                {tried.words.map((words) => (
                  <li key={words}>{words}</li>
                ))}
              </ul>
            </Notice>
          ) : null}
          <div className="flex flex-wrap gap-2">
            <Button onClick={tryOut}>Try on the first rows</Button>
            <SubmitButton busy={at !== null} busyText="Importing…" variant="primary">
              Import
            </SubmitButton>
            {at === null ? null : <Button onClick={() => sending.current?.abort()}>Cancel</Button>}
          </div>
          {at === null ? null : (
            <div>
              <progress
                aria-label={at.part === "sent" ? "Sent" : "Read"}
                value={at.share}
                max={1}
                className="w-full"
              />
              <p role="status" className="text-sm text-muted">
                {at.part === "sent"
                  ? `${(100 * at.share).toFixed(0)} % sent`
                  : `Sent; ${(100 * at.share).toFixed(0)} % read. You may leave this page: the log is listed here when it is read.`}
              </p>
            </div>
          )}
        </div>
      ) : null}
    </ActionForm>
  );
}
