import { VerdictMark } from "@/components/findings/verdict-mark";
import { type Column, Table } from "@/components/ui/table";
import { numberText } from "@/lib/charts/number-text";
import type { PaddingEffects } from "@/lib/engineering/load";

type Row = PaddingEffects["rows"][number];

const COLUMNS: readonly Column<Row>[] = [
  {
    key: "title",
    head: "Checked",
    rowHead: true,
    cell: (row) => (
      <>
        {row.title}
        {row.verdict === null ? null : (
          <span className="block text-xs">
            <VerdictMark verdict={row.verdict} look="plain" />
          </span>
        )}
      </>
    ),
  },
  { key: "cooling", head: "Cooling, Btu/h", numeric: true, cell: (row) => effectText(row.coolingBtuh) },
  { key: "heating", head: "Heating, Btu/h", numeric: true, cell: (row) => effectText(row.heatingBtuh) },
];

/** What each deviation adds to the loads, and together. */
export function PaddingTable({ effects }: { readonly effects: PaddingEffects }) {
  const total: Row = {
    title: "Together",
    verdict: null,
    coolingBtuh: effects.coolingBtuh,
    heatingBtuh: effects.heatingBtuh,
  };
  return (
    <section aria-label="Padding" className="grid min-w-0 gap-2">
      <h2 className="text-lg font-semibold">What padding adds to the loads</h2>
      <Table
        label="Effects of the padding check"
        columns={COLUMNS}
        rows={[...effects.rows, total]}
        rowKey={(row) => row.title}
      />
      {effects.open === 0 ? null : (
        <p className="text-sm text-muted">
          “open” is what cannot be said from what is entered; it is not in the sum.
        </p>
      )}
    </section>
  );
}

function effectText(effect: number | null): string {
  if (effect === null) return "open";
  const rounded = Math.round(effect);
  return rounded === 0 ? "0" : `${rounded > 0 ? "+" : "−"}${numberText(Math.abs(rounded), 0)}`;
}
