import { Table } from "@/components/ui/table";
import type { LivedInForce } from "@/lib/domain/forecast-lived/kept";
import type { ForecastRange } from "@/lib/engineering/simulation";

type Row = {
  readonly name: string;
  readonly unit: string;
  readonly decimals: number;
  readonly lived: number | null;
  readonly forecast: ForecastRange | null;
  readonly fitted: ForecastRange | null;
};

/** Lived, forecast and fitted side by side, then month by month. */
export function LivedFigures({ lived }: { readonly lived: LivedInForce }) {
  const { lived: is, forecast, fitted, months, humidityLimitPct } = lived;
  const rows: readonly Row[] = [
    {
      name: `Above ${humidityLimitPct} %`,
      unit: "h",
      decimals: 0,
      lived: is.hoursAboveLimit,
      forecast: forecast.hoursAboveLimit,
      fitted: fitted?.hoursAboveLimit ?? null,
    },
    ...(months.length < 2
      ? []
      : months.map((month) => ({
          name: `${monthName(month.month)} (${month.hours.toLocaleString("en-US")} h)`,
          unit: "h",
          decimals: 0,
          lived: month.lived,
          forecast: month.forecast,
          fitted: month.fitted,
        }))),
    {
      name: "Mean humidity",
      unit: "%",
      decimals: 1,
      lived: is.meanRhPct,
      forecast: forecast.meanRhPct,
      fitted: fitted?.meanRhPct ?? null,
    },
    ...(is.runHours === null
      ? []
      : [
          {
            name: "Compressor ran",
            unit: "h",
            decimals: 0,
            lived: is.runHours,
            forecast: forecast.runHours,
            fitted: fitted?.runHours ?? null,
          },
        ]),
  ];
  return (
    <div className="grid gap-2">
      <p className="text-sm text-muted">
        {lived.hours.toLocaleString("en-US")} h compared, hour against hour,{" "}
        {lived.weather === "the log's own"
          ? "in the log’s own weather"
          : `in the typical year of ${lived.weatherName}`}
        ; the forecast for {lived.members} houses this one may be.
      </p>
      <Table
        label="Forecast and lived"
        rows={rows}
        rowKey={({ name }) => name}
        columns={[
          { key: "name", head: "", rowHead: true, cell: ({ name }) => name },
          { key: "lived", head: "Lived", numeric: true, cell: (row) => number(row.lived, row) },
          { key: "forecast", head: "Forecast", numeric: true, cell: (row) => rangeText(row.forecast, row) },
          { key: "fitted", head: "Fitted", numeric: true, cell: (row) => rangeText(row.fitted, row) },
        ]}
      />
    </div>
  );
}

function number(value: number | null, { unit, decimals }: Pick<Row, "unit" | "decimals">): string {
  return value === null ? "–" : `${figure(value, decimals)} ${unit}`;
}

function rangeText(range: ForecastRange | null, { unit, decimals }: Pick<Row, "unit" | "decimals">) {
  if (range === null) return "–";
  return (
    <>
      {figure(range.central, decimals)} {unit}
      <br />
      <span className="text-muted">
        {figure(range.low, decimals)} to {figure(range.high, decimals)}
      </span>
    </>
  );
}

function figure(value: number, decimals: number): string {
  return value.toLocaleString("en-US", { minimumFractionDigits: decimals, maximumFractionDigits: decimals });
}

function monthName(month: string): string {
  return new Date(`${month}-01T12:00:00Z`).toLocaleDateString("en-US", {
    month: "long",
    year: "numeric",
    timeZone: "UTC",
  });
}
