import type { ReactNode } from "react";
import type { OptionRowGroup } from "@/components/options/option-rows";
import { numberText } from "@/lib/charts/number-text";
import type { JobContext } from "@/lib/domain/evaluate";
import { dayOfYearText, humidityShares, shortRunsPct, wettestMonths } from "@/lib/domain/forecast";
import type { OptionForecast } from "@/lib/engineering/simulation";
import { MissingList } from "./missing-list";
import { RangeText } from "./range-text";
import type { OptionsForecast } from "./use-options-forecast";

const SHORT_RUN_MIN = 10;

type Row = { readonly label: string; readonly cell: (option: OptionForecast) => ReactNode };

const range = (
  label: string,
  unit: string,
  pick: (option: OptionForecast) => OptionForecast["kwh"] | null,
  decimals = 0,
): Row => ({
  label,
  cell: (option) => <RangeText range={pick(option)} unit={unit} decimals={decimals} />,
});

const rows = (limitPct: number): readonly Row[] => [
  range("Dry-hours of the year", "h", ({ ranges }) => ranges.dryHours),
  range(`Hours above ${limitPct} %`, "h", ({ ranges }) => ranges.hoursAboveLimit),
  {
    label: "Wettest months",
    cell: (option) => <span className="text-sm">{wettestMonths(option, 4).join(", ") || "none"}</span>,
  },
  {
    label: "Wettest week, hours above the limit of 168",
    cell: (option) => (
      <>
        <RangeText range={option.worstWeekHours} unit="h" decimals={0} />
        {option.central.worstWeek === null ? null : (
          <span className="text-sm text-muted">
            from {dayOfYearText(option.central.worstWeek.firstHour)}, house as assumed
          </span>
        )}
      </>
    ),
  },
  { label: "Share of hours by humidity", cell: (option) => <Shares option={option} /> },
  range("Starts of the compressor", "", ({ ranges }) => ranges.starts),
  {
    label: "Mean run",
    cell: (option) => {
      const short = shortRunsPct(option, SHORT_RUN_MIN);
      return (
        <>
          <RangeText range={option.meanRunMin} unit="min" decimals={0} />
          {short === null ? null : (
            <span className="text-sm text-muted">
              {numberText(short, 0)} % of runs under {SHORT_RUN_MIN} min
            </span>
          )}
        </>
      );
    },
  },
  range("Second stage, share of cooling", "%", ({ secondStageShare: share }) =>
    share === null ? null : { central: 100 * share.central, low: 100 * share.low, high: 100 * share.high },
  ),
  range("Water drained", "lb", ({ ranges }) => ranges.drainedLb),
  range("Water dried back off the coil", "lb", ({ ranges }) => ranges.reEvaporatedLb),
  range("Electricity (without winter's heat pump)", "kWh", ({ kwh }) => kwh),
  range("Dehumidifier takes out", "pints", ({ ranges }) => ranges.dehumidifierPints),
  range("Dehumidifier runs", "h", ({ ranges }) => ranges.dehumidifierHours),
  range("Coldest in a run", "°F", ({ ranges }) => ranges.coldestInRunF, 1),
  range("Below the setpoint while cooling", "°F·h", ({ ranges }) => ranges.belowSetpointDegreeHours),
  range("Above the start of cooling", "°F·h", ({ ranges }) => ranges.aboveSetpointDegreeHours),
  {
    label: "Check of the computation",
    cell: ({ membersRun, refused, balanceError }) => (
      <span className="text-sm">
        {membersRun} houses and years run
        {refused.length === 0 ? "" : `, ${refused.length} could not be run`}; heat and water add up to within{" "}
        {balanceError.toExponential(0)} of what flowed
      </span>
    ),
  },
];

/** The forecast's group of the options table; an option without one says what it lacks, once. */
export function forecastGroup(jobId: string, context: JobContext, forecast: OptionsForecast): OptionRowGroup {
  const limitPct = context.inputs.load_summary.humidityLimitPct ?? 60;
  return {
    title: "A year in this house (forecast)",
    rows: rows(limitPct).map(({ label, cell }, place) => ({
      label,
      cell: ({ option: { id } }) => {
        const found = forecast.found.get(id);
        if (found !== undefined && !forecast.lacking.has(id) && !forecast.refused.has(id)) return cell(found);
        return place === 0 ? <Absent jobId={jobId} id={id} forecast={forecast} /> : NOTHING;
      },
    })),
  };
}

const NOTHING = (
  <span aria-hidden="true" className="text-muted">
    —
  </span>
);

function Absent({
  jobId,
  id,
  forecast: { lacking, refused, run },
}: {
  readonly jobId: string;
  readonly id: string;
  readonly forecast: OptionsForecast;
}) {
  const missing = lacking.get(id);
  const why = refused.get(id);
  if (missing !== undefined)
    return (
      <div className="max-w-64 text-sm">
        <p>Still needed:</p>
        <MissingList jobId={jobId} missing={missing} />
      </div>
    );
  if (why !== undefined) return <span className="block max-w-64 text-sm">{why}</span>;
  return <span className="text-sm text-muted">{run.phase === "running" ? "running…" : "not run"}</span>;
}

function Shares({ option }: { readonly option: OptionForecast }) {
  return (
    <ul className="grid text-sm">
      {humidityShares(option).map(({ band, pct }) => (
        <li key={band} className="flex justify-between gap-3 whitespace-nowrap">
          <span className="text-muted">{band}</span> <span>{numberText(pct, 0)} %</span>
        </li>
      ))}
    </ul>
  );
}
