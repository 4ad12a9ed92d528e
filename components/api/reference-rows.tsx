import { type Column, Table } from "@/components/ui/table";
import type { ReferenceRow } from "@/lib/schemas/api/reference";

type RowsProps = {
  readonly title: string;
  readonly rows: readonly ReferenceRow[];
  readonly what: string;
  /** True where every field is always there. */
  readonly always?: boolean;
};

/** Fields of an address, a body or an answer. */
export function ReferenceRows({ title, rows, what, always = false }: RowsProps) {
  if (rows.length === 0) return null;
  const columns: readonly Column<ReferenceRow>[] = [
    {
      key: "name",
      head: "Name",
      rowHead: true,
      cell: ({ name, required }) => (
        <>
          <code className="max-sm:break-all sm:whitespace-nowrap">{name}</code>
          {always || required ? null : <span className="block font-normal text-muted">may be left out</span>}
        </>
      ),
    },
    { key: "type", head: "Type", cell: ({ type }) => <span className="break-words">{type}</span> },
    { key: "words", head: "What it is", cell: ({ words }) => words },
  ];
  return (
    <div className="min-w-0">
      {title === "" ? null : <p className="mb-1 text-sm font-semibold">{title}</p>}
      <Table
        label={`${what}: ${title || "answer"}`}
        columns={columns}
        rows={rows}
        rowKey={(row) => row.name}
      />
    </div>
  );
}
