import { LinkButton, TextLink } from "@/components/ui/button";
import { EmptyState } from "@/components/ui/empty-state";
import { Table } from "@/components/ui/table";
import { CatalogPress } from "./catalog-press";
import type { Kept } from "./kept";

type Kind = "equipment" | "thermostat" | "instrument";

type Props = {
  readonly retired: readonly {
    readonly kind: Kind;
    readonly id: string;
    readonly name: string;
    readonly retiredOn: string;
  }[];
  readonly bringBack: Readonly<Record<Kind, (input: unknown) => Promise<Kept<void>>>>;
};

const PLACES: Record<Kind, string> = {
  equipment: "/catalog",
  thermostat: "/catalog/thermostats",
  instrument: "/catalog/instruments",
};

const asked = (kind: Kind, id: string) =>
  ({
    equipment: { modelId: id },
    thermostat: { controlId: id },
    instrument: { instrumentId: id, retired: false },
  })[kind];

/** Everything off the lists of the catalog, each with the way back. */
export function RetiredTable({ retired, bringBack }: Props) {
  return (
    <Table
      label="Retired"
      rows={retired}
      rowKey={({ id }) => id}
      empty={
        <EmptyState
          title="Nothing is retired"
          action={<LinkButton href="/catalog">Open the catalog</LinkButton>}
        >
          What you retire there comes here and can be brought back.
        </EmptyState>
      }
      columns={[
        {
          key: "name",
          head: "Entry",
          rowHead: true,
          cell: ({ kind, id, name }) => <TextLink href={`${PLACES[kind]}/${id}`}>{name}</TextLink>,
        },
        { key: "kind", head: "Kind", wideOnly: true, cell: ({ kind }) => kind },
        { key: "since", head: "Retired on", cell: ({ retiredOn }) => retiredOn },
        {
          key: "back",
          head: "Back on the lists",
          cell: ({ kind, id, name }) => (
            <CatalogPress input={asked(kind, id)} send={bringBack[kind]} label={`Bring ${name} back`}>
              Bring back
            </CatalogPress>
          ),
        },
      ]}
    />
  );
}
