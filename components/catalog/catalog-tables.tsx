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

/** In an empty catalog nothing was searched for: say what belongs there. */
const none = (isSearch: boolean, what: string, belongs: string) =>
  isSearch ? `No ${what} fits.` : `No ${what} yet. ${belongs}`;

export function EquipmentTable({
  equipment,
  isSearch,
}: {
  readonly equipment: readonly Equipment[];
  readonly isSearch: boolean;
}) {
  return (
    <Table
      label="Equipment"
      columns={EQUIPMENT}
      rows={equipment}
      rowKey={(one) => one.id}
      empty={none(
        isSearch,
        "equipment",
        "A model with its performance and fan tables; jobs choose from it and are judged by its numbers.",
      )}
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
        <TextLink href={`/catalog/thermostats/${one.id}`}>
          {one.maker} {one.name}
        </TextLink>{" "}
        {one.demoData ? <Badge tone="muted">demo data</Badge> : null}
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

export function ControlTable({
  controls,
  isSearch,
  mayEdit,
}: {
  readonly controls: readonly ControlModel[];
  readonly isSearch: boolean;
  readonly mayEdit: boolean;
}) {
  return (
    <Table
      label="Thermostats"
      columns={mayEdit ? CONTROLS : unlinked(CONTROLS, (one) => `${one.maker} ${one.name}`)}
      rows={controls}
      rowKey={(one) => one.id}
      empty={none(isSearch, "thermostat", "With the maker’s own labels, which the crew card shows.")}
    />
  );
}

type Tool = Instrument & { readonly overdue: boolean; readonly due: string };

const INSTRUMENTS: readonly Column<Tool>[] = [
  {
    key: "name",
    head: "Instrument",
    rowHead: true,
    cell: (one) => <TextLink href={`/catalog/instruments/${one.id}`}>{one.name}</TextLink>,
  },
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
        {one.due} {one.overdue ? <Badge tone="caution">calibrate</Badge> : null}
      </>
    ),
  },
];

export function InstrumentTable({
  instruments,
  isSearch,
  mayEdit,
}: {
  readonly instruments: readonly Tool[];
  readonly isSearch: boolean;
  readonly mayEdit: boolean;
}) {
  return (
    <Table
      label="Instruments"
      columns={mayEdit ? INSTRUMENTS : unlinked(INSTRUMENTS, (one) => one.name)}
      rows={instruments}
      rowKey={(one) => one.id}
      empty={none(isSearch, "instrument", "With its accuracy, so that a reading says how sure it is.")}
    />
  );
}

/** The same columns with a plain name, for people who may look and not change. */
function unlinked<Row>(columns: readonly Column<Row>[], name: (row: Row) => string): readonly Column<Row>[] {
  return columns.map((column) => (column.key === "name" ? { ...column, cell: name } : column));
}
