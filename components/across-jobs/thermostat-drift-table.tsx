import { TextLink } from "@/components/ui/button";
import { EmptyState } from "@/components/ui/empty-state";
import { type Column, Table } from "@/components/ui/table";
import { driftSentence, THERMOSTAT_DRIFT, type ThermostatDrift } from "@/lib/domain/thermostat-drift";

const COLUMNS: readonly Column<ThermostatDrift>[] = [
  {
    key: "job",
    head: "Thermostat of job",
    rowHead: true,
    cell: ({ jobId, jobNumber, customerName }) => (
      <TextLink href={`/jobs/${jobId}/control-setup`}>
        {jobNumber} {customerName}
      </TextLink>
    ),
  },
  { key: "checks", head: "Settings", numeric: true, cell: ({ checks }) => checks },
  { key: "from", head: "From", wideOnly: true, cell: ({ firstOn }) => firstOn },
  { key: "to", head: "To", wideOnly: true, cell: ({ lastOn }) => lastOn },
  { key: "words", head: "What it says", cell: driftSentence },
];

/** Thermostats whose own sensor moved. */
export function ThermostatDriftTable({ drifting }: { readonly drifting: readonly ThermostatDrift[] }) {
  const { leastF, leastRhPct, leastDays } = THERMOSTAT_DRIFT;
  return (
    <>
      <Table
        label="Thermostats that drift"
        columns={COLUMNS}
        rows={drifting}
        rowKey={({ jobId }) => jobId}
        empty={
          <EmptyState title="No thermostat drifts">
            None had its correction moved by {leastF} °F or {leastRhPct} % RH between two settings.
          </EmptyState>
        }
      />
      <p className="mt-3 max-w-prose text-sm text-muted">
        The last correction less the first, of one model in one home, over signed control setups and startups
        at least {leastDays} days apart. {leastF} °F or {leastRhPct} % RH is called drift (common practice, no
        source). Sensors of loggers that never move or disagree with a second one are findings of each
        humidity review.
      </p>
    </>
  );
}
