import Link from "next/link";
import { uncertaintyText } from "@/lib/charts/number-text";
import type { Column } from "@/lib/domain/ledger";
import { VerdictMark } from "../findings/verdict-mark";
import { cx } from "../ui/cx";
import { Quantity } from "../ui/quantity";
import type { LedgerCell, LedgerLine } from "./ledger-line";

type LedgerEntryProps = {
  readonly line: LedgerLine;
  readonly column: Column;
  readonly cell: LedgerCell | undefined;
};

/** What one cell says. All of it leads to the evidence. */
export function LedgerEntry({ line, column, cell }: LedgerEntryProps) {
  const words = <EntryWords line={line} cell={cell} />;
  if (cell === undefined || cell.href === null) return <div className="ledger-entry">{words}</div>;
  return (
    <Link
      href={cell.href}
      data-column={column}
      className={cx("ledger-entry", cell.value !== null && "ledger-evidence")}
    >
      {words}
    </Link>
  );
}

function EntryWords({ line, cell }: { readonly line: LedgerLine; readonly cell: LedgerCell | undefined }) {
  const value = cell?.value ?? null;
  return (
    <>
      <span className="ledger-value">
        {typeof value === "string" ? (
          value
        ) : (
          <Quantity value={value} unit={line.unit} decimals={line.decimals} />
        )}
      </span>
      {cell?.uncertainty === undefined || typeof value !== "number" ? null : (
        <span className="text-xs text-muted">{uncertaintyText(cell.uncertainty, line.decimals)}</span>
      )}
      {cell?.verdict === undefined || cell.verdict === null ? null : (
        <VerdictMark verdict={cell.verdict} look="plain" className="font-normal" />
      )}
      {cell?.note === undefined ? null : <span className="text-xs text-muted">{cell.note}</span>}
    </>
  );
}
