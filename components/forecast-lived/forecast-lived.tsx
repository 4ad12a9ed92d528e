import { ChartFigure } from "@/components/charts/chart-figure";
import { FindingList } from "@/components/findings/finding-list";
import { TextLink } from "@/components/ui/button";
import { Card } from "@/components/ui/card";
import { Notice } from "@/components/ui/notice";
import { fitChart } from "@/lib/charts/fit-chart";
import type { ForecastLivedView } from "@/lib/domain/forecast-lived/section";
import { type HoldAnswer, HoldButton } from "./hold-button";
import { HouseFit } from "./house-fit";
import { LivedFigures } from "./lived-figures";

type Props = { readonly view: ForecastLivedView; readonly hold: (input: unknown) => Promise<HoldAnswer> };

/** What was forecast beside what was lived, what would explain the difference, and the house fitted to its log. */
export function ForecastLived({ view, hold }: Props) {
  const { lived, importId, missing, mayHold } = view;
  return (
    <Card title="Forecast vs Lived">
      <div className="grid gap-5">
        {importId === null ? (
          <p className="text-muted">The forecast is held against a log of the house. Import one above.</p>
        ) : missing.length > 0 ? (
          <Missing missing={missing} />
        ) : mayHold ? (
          <>
            {lived === null ? (
              <p className="text-muted">
                Runs the design's forecast in the log's own weather (the typical year where it has no
                outdoors), says whether the house lived within its range, and fits the house to the log. It
                takes seconds to a minute, in the background.
              </p>
            ) : null}
            <HoldButton
              jobId={view.jobId}
              importId={importId}
              working={view.working}
              again={lived !== null}
              hold={hold}
            />
          </>
        ) : null}
        {lived === null ? null : (
          <>
            {lived.outdated ? (
              <Notice
                kind="information"
                title="The records, the weather file or the product have changed since; hold the two against each other again."
              />
            ) : null}
            <FindingList findings={view.findings} />
            <LivedFigures lived={lived} />
            {view.explanations.length === 0 ? null : (
              <div>
                <h3 className="font-semibold">What the log says of the house</h3>
                <ul className="mt-1 list-disc pl-5">
                  {view.explanations.map((one) => (
                    <li key={one}>{one}</li>
                  ))}
                </ul>
              </div>
            )}
            <HouseFit lived={lived} />
            {view.picture === null ? null : (
              <ChartFigure
                title="Measured, as assumed, and fitted"
                geometryAt={(width) =>
                  view.picture && fitChart({ ...view.picture, width, timeZone: view.timeZone })
                }
                empty="The log holds nothing to draw."
                note="What the system took out is told from how long each stage ran; the rooms are then left to themselves."
              />
            )}
            <p className="text-sm text-muted">
              Held against each other by {lived.heldByName} on {lived.heldAt.slice(0, 10)}, log of{" "}
              {lived.firstAt.slice(0, 10)} to {lived.lastAt.slice(0, 10)}.
            </p>
          </>
        )}
      </div>
    </Card>
  );
}

function Missing({ missing }: { readonly missing: ForecastLivedView["missing"] }) {
  return (
    <div>
      <p>A forecast to hold against the log still needs:</p>
      <ul className="mt-1 list-disc pl-5">
        {missing.map(({ text, href }) => (
          <li key={text}>{href === null ? text : <TextLink href={href}>{text}</TextLink>}</li>
        ))}
      </ul>
    </div>
  );
}
