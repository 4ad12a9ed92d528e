import { Table } from "@/components/ui/table";
import { FACTOR_NAMES, factorWord, isAtEdge } from "@/lib/domain/forecast-lived/fit-words";
import type { LivedInForce } from "@/lib/domain/forecast-lived/kept";
import { FIT_FACTORS } from "@/lib/engineering/simulation/fit-factors";

const WORDS = { more: "more", less: "less", "as assumed": "as assumed, as far as the log can tell" } as const;

/** The house fitted to the log: its factors, how well it tells days it has not seen, and the year with it. */
export function HouseFit({ lived }: { readonly lived: LivedInForce }) {
  const { fit, year, fitNotes, humidityLimitPct } = lived;
  if (fit === null) {
    return (
      <div>
        <h3 className="font-semibold">The house could not be fitted to this log</h3>
        <Notes notes={fitNotes} />
      </div>
    );
  }
  const rows = FIT_FACTORS.flatMap((name) => {
    const one = fit.uncertain.find((factor) => factor.name === name);
    return one === undefined ? [] : [{ ...one, factor: name }];
  });
  return (
    <div className="grid gap-3">
      <h3 className="font-semibold">The house fitted to the log</h3>
      <p className="text-sm text-muted">
        Each as a factor on the house of the load summary; the range is what the log leaves open.
      </p>
      <Table
        label="Factors on the house as assumed"
        rows={rows}
        rowKey={({ name }) => name}
        columns={[
          {
            key: "name",
            head: "",
            rowHead: true,
            cell: ({ factor }) => FACTOR_NAMES[factor],
          },
          { key: "value", head: "Fitted", numeric: true, cell: ({ value }) => value.toFixed(2) },
          {
            key: "range",
            head: "Range",
            numeric: true,
            cell: ({ low, high }) =>
              `${low.toFixed(2)}${isAtEdge(low) ? " or less" : ""} to ${high.toFixed(2)}${isAtEdge(high) ? " or more" : ""}`,
          },
          { key: "word", head: "So", wideOnly: true, cell: ({ factor }) => WORDS[factorWord(fit, factor)] },
        ]}
      />
      <p>
        On {fit.heldOut.days} days the fit has not seen, the fitted house is off by{" "}
        {fit.heldOut.temperatureF.toFixed(1)} °F and {fit.heldOut.grainsPerLb.toFixed(1)} gr/lb; as assumed it
        was {fit.heldOutBefore.temperatureF.toFixed(1)} °F and {fit.heldOutBefore.grainsPerLb.toFixed(1)}{" "}
        gr/lb. On the {fit.fitted.days} days fitted: {fit.fitted.temperatureF.toFixed(1)} °F and{" "}
        {fit.fitted.grainsPerLb.toFixed(1)} gr/lb. (Root mean square of temperature and moisture.)
      </p>
      {year === null ? null : (
        <p>
          Forecast again, a typical year of the fitted house has {whole(year.fitted.central)} h above{" "}
          {humidityLimitPct} % ({whole(year.fitted.low)} to {whole(year.fitted.high)} h); as assumed it had{" "}
          {whole(year.assumed.central)} h ({whole(year.assumed.low)} to {whole(year.assumed.high)} h).
        </p>
      )}
      <Notes notes={fitNotes} />
    </div>
  );
}

function Notes({ notes }: { readonly notes: readonly string[] }) {
  return (
    <ul className="list-disc pl-5 text-sm text-muted">
      {notes.map((note) => (
        <li key={note}>{note}</li>
      ))}
    </ul>
  );
}

function whole(value: number): string {
  return Math.round(value).toLocaleString("en-US");
}
