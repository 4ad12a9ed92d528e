import type { LedgerLine as DrawnLine, LedgerGroup } from "@/components/ledger/ledger-line";
import { COLUMNS, type LedgerLine } from "@/lib/domain/ledger";
import { STAGE_SLUGS } from "@/lib/domain/stages";

/** Gives every figure the address of its evidence. */
export function ledgerWithLinks(
  jobId: string,
  lines: readonly LedgerLine[],
): { readonly lines: readonly DrawnLine[]; readonly groups: readonly LedgerGroup[] } {
  const drawn = lines.map((line) => ({
    ...line,
    cells: Object.fromEntries(
      COLUMNS.map((column) => {
        const { value, uncertainty, verdict, note, evidence } = line.cells[column];
        const href =
          evidence === null
            ? null
            : `/jobs/${jobId}/${STAGE_SLUGS[evidence.stage]}${evidence.field === null ? "" : `#field-${evidence.field}`}`;
        return [
          column,
          { value, uncertainty: uncertainty ?? undefined, verdict, note: note ?? undefined, href },
        ];
      }),
    ),
  }));
  const titles = [...new Set(lines.map((line) => line.group))];
  const groups = titles.map((title) => ({
    key: title,
    title,
    lines: lines.filter((line) => line.group === title).map((line) => line.key),
  }));
  return { lines: drawn, groups };
}
