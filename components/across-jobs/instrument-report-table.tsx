import { EmptyState } from "@/components/ui/empty-state";
import { type Column, Table } from "@/components/ui/table";
import type { Drift, InstrumentReport } from "@/lib/domain/instrument-report";

const COLUMNS: readonly Column<InstrumentReport>[] = [
  {
    key: "name",
    head: "Instrument",
    rowHead: true,
    cell: ({ instrument }) => instrument.name,
  },
  {
    key: "calibration",
    head: "Calibration",
    cell: ({ calibration, instrument }) =>
      calibration === "not recorded"
        ? "not recorded"
        : `${calibration}, due ${instrument.calibrationDueOn ?? ""}`,
  },
  { key: "startups", head: "Startups", numeric: true, cell: ({ startups }) => startups },
  { key: "odd", head: "Odd", numeric: true, cell: ({ odd }) => odd },
  {
    key: "temperature",
    head: "Thermostats corrected, °F",
    numeric: true,
    wideOnly: true,
    cell: ({ temperature }) => driftText(temperature),
  },
  {
    key: "humidity",
    head: "Corrected, % RH",
    numeric: true,
    wideOnly: true,
    cell: ({ humidity }) => driftText(humidity),
  },
  {
    key: "words",
    head: "What it says",
    cell: ({ words }) =>
      words.length === 0 ? (
        "nothing against it"
      ) : (
        <ul className="grid max-w-prose gap-1">
          {words.map((word) => (
            <li key={word}>{word}</li>
          ))}
        </ul>
      ),
  },
];

/** What is known against each instrument. */
export function InstrumentReportTable({ reports }: { readonly reports: readonly InstrumentReport[] }) {
  return (
    <>
      <Table
        label="Instruments"
        columns={COLUMNS}
        rows={reports}
        rowKey={({ instrument }) => instrument.id}
        empty={
          <EmptyState title="No instrument">
            The catalog holds no instrument yet. Readings without one carry no uncertainty.
          </EmptyState>
        }
      />
      <p className="mt-3 max-w-prose text-sm text-muted">
        Odd: the air side and the electrical or caught-water side disagree beyond their uncertainty.
        Corrected: the median of what the instrument showed less what thermostats showed, and how many
        thermostats. With six checks or more a line is laid through time; a change is called drift when its 95
        % interval leaves out zero and it exceeds 1 °F or 3 % RH (common practice, no source).
      </p>
    </>
  );
}

function driftText(found: Drift | null): string {
  return found === null ? "none" : `${found.median.toFixed(1)} (${found.checks})`;
}
