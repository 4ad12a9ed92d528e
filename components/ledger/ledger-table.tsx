// biome-ignore-all lint/a11y/noRedundantRoles: `display: block` takes a table's own roles away in some browsers
// biome-ignore-all lint/a11y/useSemanticElements: as above
import { VerdictMark } from "../findings/verdict-mark";
import { LedgerEntry } from "./ledger-entry";
import { LedgerKeys } from "./ledger-keys";
import { LEDGER_COLUMNS, type LedgerGroup, type LedgerLine } from "./ledger-line";

export type LedgerTableProps = {
  /** Names the table, for instance "Ledger of job 1042". */
  readonly label: string;
  readonly lines: readonly LedgerLine[];
  /** Headings in order. Lines in no group come last under "Other lines"; without groups all stand together. */
  readonly groups?: readonly LedgerGroup[];
};

/**
 * The job on one page: each line from what was designed to what the house lives with.
 * On a phone each line becomes a block; the roles keep it a table for a screen reader when styles change its display.
 */
export function LedgerTable({ label, lines, groups = [] }: LedgerTableProps) {
  return (
    <LedgerKeys>
      <section
        aria-label={label}
        data-scroll-region=""
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
        tabIndex={0}
        className="ledger"
      >
        <table role="table">
          <caption className="sr-only">{label}</caption>
          <thead role="rowgroup">
            <tr role="row">
              <th role="columnheader" scope="col">
                Line
              </th>
              {LEDGER_COLUMNS.map((column) => (
                <th key={column.key} role="columnheader" scope="col">
                  {column.title}
                  <span className="block text-xs font-normal text-muted">{column.meaning}</span>
                </th>
              ))}
              <th role="columnheader" scope="col">
                Verdict
              </th>
            </tr>
          </thead>
          {grouped(lines, groups).map((group) => (
            <tbody key={group.key} role="rowgroup">
              {group.title === null ? null : (
                <tr role="row" className="ledger-group">
                  <th role="rowheader" scope="rowgroup" colSpan={LEDGER_COLUMNS.length + 2}>
                    {group.title}
                  </th>
                </tr>
              )}
              {group.lines.map((line) => (
                <LineRow key={line.key} line={line} />
              ))}
            </tbody>
          ))}
        </table>
      </section>
    </LedgerKeys>
  );
}

function LineRow({ line }: { readonly line: LedgerLine }) {
  return (
    <tr role="row" id={`line-${line.key}`} className="ledger-line">
      <th role="rowheader" scope="row">
        {line.label}
      </th>
      {LEDGER_COLUMNS.map((column) => (
        <td key={column.key} role="cell">
          <span aria-hidden="true" className="ledger-column">
            {column.title}
          </span>
          <LedgerEntry line={line} column={column.key} cell={line.cells[column.key]} />
        </td>
      ))}
      <td role="cell" className="ledger-verdict">
        <VerdictMark verdict={line.verdict} />
      </td>
    </tr>
  );
}

type DrawnGroup = {
  readonly key: string;
  readonly title: string | null;
  readonly lines: readonly LedgerLine[];
};

/** Every line is drawn once, whatever the groups name. */
function grouped(lines: readonly LedgerLine[], groups: readonly LedgerGroup[]): readonly DrawnGroup[] {
  const named = groups.map((group) => ({
    key: group.key,
    title: group.title,
    lines: group.lines.flatMap((key) => lines.filter((line) => line.key === key)),
  }));
  const rest = lines.filter((line) => !groups.some((group) => group.lines.includes(line.key)));
  const others = { key: "other", title: groups.length === 0 ? null : "Other lines", lines: rest };
  return [...named, others].filter((group) => group.lines.length > 0);
}
