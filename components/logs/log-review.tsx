import Link from "next/link";
import { FindingList } from "@/components/findings/finding-list";
import { Card } from "@/components/ui/card";
import { Notice } from "@/components/ui/notice";
import type { LikelyCause } from "@/lib/engineering/logs";
import type { LogImportData, LogReviewData } from "./log-data";
import { LogImport } from "./log-import";
import { LogPictureSheets } from "./log-pictures";
import { ZoomChart } from "./zoom-chart";

/** What the house did, by its own log: what may be behind it, the pictures, and the way to add a log. */
export function LogReview({ view }: { readonly view: LogReviewData }) {
  const { shown, window, limitPct, timeZone, jobId, mayUpload, imports } = view;
  return (
    <div className="grid gap-6">
      <Card title="Log of the house">
        <div className="grid gap-5">
          {imports.length === 0 ? <p className="text-muted">No log has been imported yet.</p> : null}
          {shown && !view.isChosen ? (
            <Notice
              kind="information"
              title="The newest log is shown. Choose it in the record below to review it."
            />
          ) : null}
          {view.outdoors ? <OutdoorSource jobId={jobId} outdoors={view.outdoors} /> : null}
          {shown && window ? (
            <ZoomChart
              key={shown.id}
              jobId={jobId}
              importId={shown.id}
              whole={window}
              limitPct={limitPct}
              timeZone={timeZone}
            />
          ) : null}
          {imports.length > 0 ? <ImportList jobId={jobId} imports={imports} /> : null}
          {mayUpload ? <LogImport jobId={jobId} sources={view.sources} timeZone={view.timeZone} /> : null}
        </div>
      </Card>
      {shown ? (
        <>
          <Card title="Likely causes">
            <Causes causes={view.causes} otherwise={view.withoutCause} />
          </Card>
          {view.tradePicture ? (
            <Card title="Beside the trade’s picture of a good job">
              <p className="text-sm text-muted">{view.tradePicture.expected}</p>
              <ul className="mt-2 list-disc pl-5">
                {view.tradePicture.compared.map((words) => (
                  <li key={words}>{words}</li>
                ))}
              </ul>
            </Card>
          ) : null}
          <Card title="How it ran and dried">
            <LogPictureSheets view={view} />
          </Card>
          {view.cannotTell.length > 0 ? (
            <Card title="What this log cannot tell">
              <FindingList findings={view.cannotTell} />
            </Card>
          ) : null}
        </>
      ) : null}
    </div>
  );
}

const OUTDOOR_WORDS: Readonly<Record<string, string>> = {
  log: "Outdoor readings are the log’s own.",
  "station file": "Outdoor readings come from a weather station’s file, hourly and not at the house.",
};

type OutdoorProps = { readonly jobId: string; readonly outdoors: NonNullable<LogReviewData["outdoors"]> };

function OutdoorSource({ jobId, outdoors: { from, typical } }: OutdoorProps) {
  if (typical) {
    return (
      <Notice kind="information" title="The outdoors drawn are typical, not lived">
        The log has no outdoor readings. Drawn beside it is the typical year “{typical.name}”: at these times
        of the year {typical.meanF.toFixed(0)} °F with a dew point of {typical.meanDewPointF.toFixed(0)} °F in
        the mean. Nothing is judged by it; import a weather station’s file of the same days for that.
      </Notice>
    );
  }
  const words = OUTDOOR_WORDS[from];
  if (words !== undefined) return <p className="text-sm text-muted">{words}</p>;
  return (
    <p className="text-sm text-muted">
      There are no outdoor readings. Import a weather station’s file of the same days, or{" "}
      <Link className="text-link" href={`/jobs/${jobId}/weather`}>
        choose a typical weather year
      </Link>{" "}
      to see the usual outdoors beside the log.
    </p>
  );
}

type CausesProps = { readonly causes: readonly LikelyCause[]; readonly otherwise: string };

function Causes({ causes, otherwise }: CausesProps) {
  if (causes.length === 0) return <p>{otherwise}</p>;
  return (
    <ol className="grid gap-4">
      {causes.map(({ id, title, evidence, against, nextCheck }, index) => (
        <li key={id} className="border-l-4 border-rule pl-3">
          <h3 className="font-semibold">
            {index + 1}. {title}
          </h3>
          <p className="text-sm">For it: {evidence.join("; ")}.</p>
          <p className="text-sm">
            Against it: {against.length === 0 ? "nothing in this log" : against.join("; ")}.
          </p>
          <p className="text-sm">Next check: {nextCheck}</p>
        </li>
      ))}
    </ol>
  );
}

type ImportListProps = { readonly jobId: string; readonly imports: readonly LogImportData[] };

/** Remarks shown on the page; the file has them all. */
const REMARKS_SHOWN = 200;

function ImportList({ jobId, imports }: ImportListProps) {
  return (
    <ul className="grid gap-2 text-sm">
      {imports.map((log) => (
        <li key={log.id}>
          <p className="break-words">
            {log.fileName} ({log.sourceName}
            {log.summary === null ? ", weather station" : ""}), {log.firstAt.slice(0, 10)} to{" "}
            {log.lastAt.slice(0, 10)}: {log.rowsKept.toLocaleString("en-US")} of{" "}
            {log.rowsRead.toLocaleString("en-US")} rows taken. Imported by {log.importedBy}.
          </p>
          {log.problems.length > 0 ? (
            <details className="mt-1">
              <summary className="inline-block min-h-8 cursor-pointer py-1.5 text-accent">
                {log.remarkCount.toLocaleString("en-US")} remarks on rows
              </summary>
              <ul className="mt-1 grid gap-0.5">
                {log.problems.slice(0, REMARKS_SHOWN).map((one) => (
                  <li key={`${one.row} ${one.reason}`}>
                    {one.row === 0 ? "" : `Row ${one.row}: `}
                    {one.reason}
                  </li>
                ))}
              </ul>
              <p className="mt-1">
                {log.remarkCount > REMARKS_SHOWN
                  ? `${(log.remarkCount - REMARKS_SHOWN).toLocaleString("en-US")} more are in the file. `
                  : ""}
                <a className="text-link" href={`/api/jobs/${jobId}/logs/${log.id}/remarks`} download>
                  All remarks as CSV
                </a>
              </p>
            </details>
          ) : null}
        </li>
      ))}
    </ul>
  );
}
