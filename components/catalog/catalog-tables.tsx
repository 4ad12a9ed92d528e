import { Badge } from "@/components/ui/badge";
import { TextLink } from "@/components/ui/button";
import { type Column, Table } from "@/components/ui/table";
import {
  COMPRESSOR_KIND_NAMES,
  type ControlModel,
  type EquipmentModel,
  type Instrument,
} from "@/lib/domain/catalog";

type Equipment = Omit<EquipmentModel, "performance" | "fan">;

const EQUIPMENT: readonly Column<Equipment>[] = [
  {
    key: "name",
    head: "Equipment",
    rowHead: true,
    cell: (one) => (
      <>
        <TextLink href={`/catalog/${one.id}`}>
          {one.maker} {one.name}
        </TextLink>{" "}
        {one.demoData ? <Badge tone="muted">demo data</Badge> : null}
      </>
    ),
  },
  {
    key: "kind",
    head: "Compressor",
    wideOnly: true,
    cell: (one) => COMPRESSOR_KIND_NAMES[one.compressorKind],
  },
  { key: "tons", head: "Nominal, tons", numeric: true, cell: (one) => one.nominalTons },
  {
    key: "settings",
    head: "Capacity settings",
    wideOnly: true,
    cell: (one) => one.data.capacitySettings.map((setting) => setting.name).join(", "),
  },
  { key: "refrigerant", head: "Refrigerant", wideOnly: true, cell: (one) => one.refrigerant },
  { key: "version", head: "Version", numeric: true, wideOnly: true, cell: (one) => one.version },
];

export function EquipmentTable({ equipment }: { readonly equipment: readonly Equipment[] }) {
  return (
    <Table
      label="Equipment"
      columns={EQUIPMENT}
      rows={equipment}
      rowKey={(one) => one.id}
      empty="No equipment has been entered."
    />
  );
}

const CONTROLS: readonly Column<ControlModel>[] = [
  {
    key: "name",
    head: "Thermostat",
    rowHead: true,
    cell: (one) => (
      <>
        {one.maker} {one.name} {one.demoData ? <Badge tone="muted">demo data</Badge> : null}
      </>
    ),
  },
  { key: "stages", head: "Cooling stages", numeric: true, cell: (one) => one.data.stages },
  {
    key: "labels",
    head: "Maker’s labels recorded",
    numeric: true,
    wideOnly: true,
    cell: (one) => Object.keys(one.data.makerLabels).length,
  },
];

export function ControlTable({ controls }: { readonly controls: readonly ControlModel[] }) {
  return (
    <Table
      label="Thermostats"
      columns={CONTROLS}
      rows={controls}
      rowKey={(one) => one.id}
      empty="No thermostat has been entered."
    />
  );
}

type Tool = Instrument & { readonly overdue: boolean };

const INSTRUMENTS: readonly Column<Tool>[] = [
  { key: "name", head: "Instrument", rowHead: true, cell: (one) => one.name },
  {
    key: "accuracy",
    head: "Accuracy",
    cell: (one) => (
      <ul>
        {one.accuracy.map((line) => (
          <li key={line.quantity}>
            {line.quantity}: ± {line.plusMinus} {line.unit}
            {line.percentOfReading > 0 ? ` and ${line.percentOfReading} % of the reading` : ""}
          </li>
        ))}
      </ul>
    ),
  },
  {
    key: "due",
    head: "Calibration due",
    cell: (one) => (
      <>
        {one.calibrationDueOn ?? "not recorded"} {one.overdue ? <Badge tone="caution">overdue</Badge> : null}
      </>
    ),
  },
];

export function InstrumentTable({ instruments }: { readonly instruments: readonly Tool[] }) {
  return (
    <Table
      label="Instruments"
      columns={INSTRUMENTS}
      rows={instruments}
      rowKey={(one) => one.id}
      empty="No instrument has been entered."
    />
  );
}
