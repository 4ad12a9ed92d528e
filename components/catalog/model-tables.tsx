import { Quantity } from "@/components/ui/quantity";
import { type Column, Table } from "@/components/ui/table";
import type { FanRow, PerformanceRow } from "@/lib/domain/catalog";

const quantity = (value: number | null, unit: string, decimals: number) => (
  <Quantity value={value} unit={unit} decimals={decimals} />
);

const PERFORMANCE: readonly Column<PerformanceRow>[] = [
  { key: "setting", head: "Rows of", rowHead: true, cell: (row) => row.capacitySetting },
  { key: "mode", head: "Mode", cell: (row) => row.mode },
  { key: "outdoor", head: "Outdoor", numeric: true, cell: (row) => quantity(row.outdoorDbF, "°F", 0) },
  { key: "wb", head: "Entering wet bulb", numeric: true, cell: (row) => quantity(row.enteringWbF, "°F", 0) },
  { key: "db", head: "Entering dry bulb", numeric: true, cell: (row) => quantity(row.enteringDbF, "°F", 0) },
  { key: "cfm", head: "Airflow", numeric: true, cell: (row) => quantity(row.airflowCfm, "cfm", 0) },
  { key: "total", head: "Total", numeric: true, cell: (row) => quantity(row.totalBtuh, "Btu/h", 0) },
  { key: "sensible", head: "Sensible", numeric: true, cell: (row) => quantity(row.sensibleBtuh, "Btu/h", 0) },
  { key: "power", head: "Power", numeric: true, cell: (row) => quantity(row.powerW, "W", 0) },
];

export function PerformanceTable({ rows }: { readonly rows: readonly PerformanceRow[] }) {
  return (
    <Table
      label="Performance data"
      columns={PERFORMANCE}
      rows={rows}
      rowKey={(row) =>
        [
          row.capacitySetting,
          row.mode,
          row.outdoorDbF,
          row.enteringWbF,
          row.enteringDbF,
          row.airflowCfm,
        ].join(" ")
      }
      maxHeight="32rem"
      empty="The maker’s table has not been entered."
    />
  );
}

const FAN: readonly Column<FanRow>[] = [
  { key: "setting", head: "Airflow setting", rowHead: true, cell: (row) => row.airflowSetting },
  {
    key: "static",
    head: "External static",
    numeric: true,
    cell: (row) => quantity(row.externalStaticInWc, "in. w.c.", 2),
  },
  { key: "cfm", head: "Airflow", numeric: true, cell: (row) => quantity(row.airflowCfm, "cfm", 0) },
  { key: "power", head: "Power", numeric: true, cell: (row) => quantity(row.powerW, "W", 0) },
];

export function FanTable({ rows }: { readonly rows: readonly FanRow[] }) {
  return (
    <Table
      label="Fan table"
      columns={FAN}
      rows={rows}
      rowKey={(row) => `${row.airflowSetting} ${row.externalStaticInWc}`}
      maxHeight="32rem"
      empty="The fan table has not been entered."
    />
  );
}
