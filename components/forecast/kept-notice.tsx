"use client";

import { useState } from "react";
import { heard } from "@/components/forms/still-there";
import type { Answer, OptionDeskView } from "@/components/options/option-data";
import { Button } from "@/components/ui/button";
import { type ForecastChanges, forecastSentence } from "@/lib/domain/forecast";

export type KeepDoor = (input: unknown) => Promise<Answer>;

/** The forecast kept with the job, and the button that keeps one of the design as it stands. */
export function KeptNotice({
  view,
  changes,
  keep,
}: {
  readonly view: OptionDeskView;
  readonly changes: ForecastChanges;
  readonly keep: KeepDoor;
}) {
  const [said, setSaid] = useState<string | null>(null);
  const [busy, setBusy] = useState(false);
  const { forecast } = view.context;
  const ask = async () => {
    setBusy(true);
    try {
      const answer = heard(await keep({ jobId: view.jobId, changed: changes }));
      setSaid(
        answer.ok ? "It is being run on the server and will stand here and in the ledger." : answer.message,
      );
    } catch {
      setSaid("No connection to the server. Try again when it is back.");
    }
    setBusy(false);
  };
  return (
    <div className="flex flex-wrap items-center gap-x-4 gap-y-2 border-y border-rule py-3 text-sm">
      <p className="min-w-[min(100%,20rem)] flex-1">
        {forecast === null ? (
          "No forecast is kept with the job yet. Choosing an option keeps one."
        ) : (
          <>
            Kept for “{forecast.optionLabel}”: {forecastSentence(forecast)}{" "}
            <span className="text-muted">
              {forecast.keptByName}, {forecast.keptAt.slice(0, 10)}
            </span>
            {forecast.stale ? <strong> The design has changed since.</strong> : null}
          </>
        )}
        {said === null ? null : <span role="status"> {said}</span>}
      </p>
      {view.mayEdit ? (
        <Button onClick={() => void ask()} busy={busy} busyText="Asking…">
          Keep the forecast of the records
        </Button>
      ) : null}
    </div>
  );
}
