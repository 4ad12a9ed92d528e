// biome-ignore-all lint/a11y/noRedundantRoles: another `display` takes a table's own roles away in some browsers
// biome-ignore-all lint/a11y/useSemanticElements: as above
import Link from "next/link";
import type { ReactNode } from "react";
import { cx } from "./cx";

export type Column<Row> = {
  readonly key: string;
  readonly head: ReactNode;
  readonly cell: (row: Row) => ReactNode;
  readonly numeric?: boolean;
  /** The column that names the row. */
  readonly rowHead?: boolean;
  /** Where pressing the head leads, and how the rows are sorted by it now. */
  readonly sort?: { readonly href: string; readonly direction: "ascending" | "descending" | null };
  /** Left out below 640 px: the row must be understood without it. */
  readonly wideOnly?: boolean;
  /** Where it stands in a row that is stacked on a phone; else it takes a line of its own. */
  readonly onPhone?: "left" | "top" | "top right" | "middle" | "right";
};

/** A stacked row has three columns: its name, the middle, the right. */
const PLACES = {
  left: "max-sm:col-start-1 max-sm:row-start-1",
  top: "max-sm:col-start-2 max-sm:row-start-1",
  "top right": "max-sm:col-start-3 max-sm:row-start-1 max-sm:text-end",
  middle: "max-sm:col-start-2",
  right: "max-sm:col-start-3 max-sm:text-end",
} as const;

export type TableProps<Row> = {
  /** Names the table for everyone who does not see it. */
  readonly label: string;
  readonly columns: readonly Column<Row>[];
  readonly rows: readonly Row[];
  readonly rowKey: (row: Row) => string;
  /** Limits the height, so that the head stays while the rows scroll. Any CSS length. */
  readonly maxHeight?: string;
  /** Below 640 px a row is a small sheet, its cells one below the other. */
  readonly stacked?: boolean;
  /** Shown in place of rows when there are none. */
  readonly empty?: ReactNode;
  /** A second line under the name: the count, the filter in words. */
  readonly caption?: ReactNode;
};

const SORT_SIGN = { ascending: "↑", descending: "↓" } as const;

/** A ruled table. Its region scrolls by keyboard as well. */
export function Table<Row>(table: TableProps<Row>) {
  const { label, columns, rows, rowKey, maxHeight, stacked = false, empty, caption } = table;
  if (rows.length === 0 && empty !== undefined) return <>{empty}</>;
  return (
    <section
      aria-label={label}
      data-scroll-region=""
      // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
      tabIndex={0}
      className="overflow-auto border border-rule bg-sheet"
      style={maxHeight === undefined ? undefined : { maxHeight }}
    >
      <table role="table" className={cx("ruled-table", stacked && "stacked")}>
        <caption className={caption === undefined ? "sr-only" : "px-3 pt-2 text-left text-sm text-muted"}>
          {caption ?? label}
        </caption>
        <thead role="rowgroup">
          <tr role="row">
            {columns.map((column) => (
              <HeadCell key={column.key} column={column} />
            ))}
          </tr>
        </thead>
        <tbody role="rowgroup">
          {rows.map((row) => (
            <tr role="row" key={rowKey(row)}>
              {columns.map((column) => (
                <BodyCell key={column.key} column={column} row={row} />
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function HeadCell<Row>({ column }: { readonly column: Column<Row> }) {
  const direction = column.sort?.direction ?? null;
  return (
    <th
      role="columnheader"
      scope="col"
      className={cx(column.numeric && "numeric", column.wideOnly && "max-sm:hidden")}
      aria-sort={direction ?? undefined}
    >
      {column.sort === undefined ? (
        column.head
      ) : (
        <Link href={column.sort.href} className="inline-block py-1 hover:text-ink hover:underline">
          {column.head}
          <span aria-hidden="true" className="ml-1 inline-block w-3 text-accent">
            {direction === null ? "" : SORT_SIGN[direction]}
          </span>
        </Link>
      )}
    </th>
  );
}

function BodyCell<Row>({ column, row }: { readonly column: Column<Row>; readonly row: Row }) {
  const className = cx(
    column.numeric && "numeric",
    column.wideOnly && "max-sm:hidden",
    column.onPhone === undefined
      ? "in-[.stacked]:max-sm:col-span-2 in-[.stacked]:max-sm:col-start-2"
      : PLACES[column.onPhone],
  );
  return column.rowHead ? (
    <th role="rowheader" scope="row" className={className}>
      {column.cell(row)}
    </th>
  ) : (
    <td role="cell" className={className}>
      {column.cell(row)}
    </td>
  );
}
