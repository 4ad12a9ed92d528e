import { Button } from "@/components/ui/button";
import { numberText } from "@/lib/charts/number-text";
import type { SearchFound, SearchProgress } from "@/lib/engineering/simulation";

type Props = {
  readonly progress: SearchProgress;
  readonly running: boolean;
  readonly limitPct: number;
  readonly byHand: (found: SearchFound) => readonly string[];
  /** `null` for who may not change options. */
  readonly make: ((found: SearchFound) => void) | null;
};

/** The few that keep the promise, least effort first; while none does, those that come closest. */
export function FoundTable({ progress, running, limitPct, byHand, make }: Props) {
  const keeps = progress.best.length > 0;
  const shown = keeps ? progress.best : progress.closest;
  return (
    <section aria-labelledby="found-heading" className="min-w-0">
      <h3 id="found-heading" className="mb-2 font-semibold">
        {keeps
          ? "They keep the promise, least effort first"
          : running
            ? "None keeps the promise yet; the closest so far"
            : "No combination keeps the promise; the closest"}
      </h3>
      <section
        data-scroll-region=""
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
        tabIndex={0}
        aria-label="Combinations found"
        className="overflow-x-auto border border-rule"
      >
        <table className="ruled-table">
          <thead>
            <tr>
              <th scope="col">Settings</th>
              <th scope="col" className="numeric">
                Effort
              </th>
              <th scope="col" className="numeric">
                Hours above {limitPct} %
              </th>
              <th scope="col" className="numeric">
                Too warm, °F·h
              </th>
              <th scope="col" className="numeric">
                kWh
              </th>
              {make === null ? null : (
                <th scope="col">
                  <span className="sr-only">Make it an option</span>
                </th>
              )}
            </tr>
          </thead>
          <tbody>
            {shown.map((found) => (
              <tr key={Object.values(found.place).join(" ")}>
                <td className="min-w-64 align-top">
                  <Names found={found} byHand={byHand(found)} />
                </td>
                <td className="numeric align-top">{found.effort}</td>
                <td className="numeric align-top">{numberText(found.hoursAboveLimit, 0)}</td>
                <td className="numeric align-top">{numberText(found.aboveSetpointDegreeHours, 0)}</td>
                <td className="numeric align-top">{numberText(found.kwh, 0)}</td>
                {make === null ? null : (
                  <td className="align-top">
                    <Button onClick={() => make(found)}>Make this an option</Button>
                  </td>
                )}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </section>
  );
}

function Names({ found, byHand }: { readonly found: SearchFound; readonly byHand: readonly string[] }) {
  const { capacity, airflow, controls, ventilation, dehumidifier } = found.names;
  return (
    <>
      {capacity}; airflow {airflow}; controls {controls}; ventilation {ventilation}; dehumidifier{" "}
      {dehumidifier}
      {byHand.length === 0 ? null : (
        <span className="block text-sm text-muted">An option does not hold: {byHand.join("; ")}.</span>
      )}
    </>
  );
}
