import { type Column, Table } from "@/components/ui/table";

type Calibration = {
  readonly calibratedOn: string | null;
  readonly calibrationDueOn: string | null;
  readonly accuracy: readonly string[];
  readonly byName: string;
};

const COLUMNS: readonly Column<Calibration>[] = [
  { key: "on", head: "Calibrated", rowHead: true, cell: (one) => one.calibratedOn ?? "day taken away" },
  { key: "due", head: "Next due", cell: (one) => one.calibrationDueOn ?? "not recorded" },
  { key: "accuracy", head: "Accuracy then", wideOnly: true, cell: (one) => one.accuracy.join("; ") },
  { key: "by", head: "Recorded by", cell: (one) => one.byName },
];

/** Each calibration that was recorded: readings keep the accuracy they were taken with. */
export function CalibrationHistory({ calibrations }: { readonly calibrations: readonly Calibration[] }) {
  return (
    <section className="mt-6 grid gap-2">
      <h2 className="text-lg font-semibold">Calibrations</h2>
      <Table
        label="Calibrations"
        columns={COLUMNS}
        rows={calibrations}
        rowKey={(one) => `${calibrations.indexOf(one)}`}
        empty={<p className="text-sm text-muted">None recorded since the instrument was added.</p>}
      />
    </section>
  );
}
