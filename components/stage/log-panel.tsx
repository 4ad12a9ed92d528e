import { HumidityChart } from "@/components/charts/charts";
import { Card } from "@/components/ui/card";
import type { LogImportView, LogPanelData } from "./log-panel-data";
import { LogUpload } from "./log-upload";

/** The house's own log: what was imported, how it looks, and the way to add one. */
export function LogPanel({ view }: { readonly view: LogPanelData }) {
  const { shown, points, limitPct, timeZone, jobId, mayUpload } = view;
  return (
    <Card title="Log of the house">
      <div className="grid gap-5">
        {shown ? <Imported log={shown} /> : <p className="text-muted">No log has been imported yet.</p>}
        {shown && limitPct !== null ? (
          <HumidityChart
            title="Indoor relative humidity"
            readings={points}
            band={{ lowPercent: 50, highPercent: limitPct }}
            gapAfterMinutes={60}
            timeZone={timeZone}
          />
        ) : null}
        {mayUpload ? <LogUpload jobId={jobId} /> : null}
      </div>
    </Card>
  );
}

function Imported({ log }: { readonly log: LogImportView }) {
  return (
    <div className="text-sm">
      <p>
        {log.fileName} ({log.sourceName}), {log.summary.firstAt.slice(0, 10)} to{" "}
        {log.summary.lastAt.slice(0, 10)}: {log.rowsKept.toLocaleString("en-US")} of{" "}
        {log.rowsRead.toLocaleString("en-US")} rows taken. Imported by {log.importedBy}.
      </p>
      {log.problems.length > 0 ? (
        <details className="mt-1">
          <summary className="cursor-pointer">{log.problems.length} remarks on rows</summary>
          <ul className="mt-1 max-h-60 overflow-y-auto">
            {log.problems.map((one) => (
              <li key={`${one.row} ${one.reason}`}>
                Row {one.row}: {one.reason}
              </li>
            ))}
          </ul>
        </details>
      ) : null}
    </div>
  );
}
