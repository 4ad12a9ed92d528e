"use client";

import { Notice } from "@/components/ui/notice";
import {
  type Block,
  type CheckedTable,
  quantitiesOf,
  type RefusedCell,
  type TableKind,
  type TableMapping,
} from "@/lib/schemas/catalog-table";

type Props = {
  readonly kind: TableKind;
  readonly block: Block;
  readonly mapping: TableMapping;
  readonly table: CheckedTable;
  readonly onCell: (row: number, column: number, value: string) => void;
};

/** Refused cells written out; the rest stay listed in the table itself. */
const LISTED = 50;

const cellId = (row: number, quantity: string) => `cell-${row}-${quantity}`;

/** Every row as it will be read. A refused cell is marked, named, and can be mended where it stands. */
export function ImportPreview({ kind, block, mapping, table, onCell }: Props) {
  const columns = quantitiesOf(kind).filter(({ key }) => mapping[key] !== undefined);
  const refused = new Map(table.refused.map((cell) => [cellId(cell.row, cell.quantity), cell]));
  const bad = new Set(table.refused.map(({ row }) => row));
  return (
    <section aria-labelledby="preview" className="grid gap-3">
      <h2 id="preview" className="text-lg font-semibold">
        {table.goodRows} of {table.allRows} rows can be kept
      </h2>
      {table.refused.length === 0 ? (
        <Notice kind="done" title="Every cell can be used." />
      ) : (
        <RefusedList refused={table.refused} />
      )}
      <section
        aria-label="Preview of the rows"
        data-scroll-region=""
        // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keyboard
        tabIndex={0}
        className="max-h-[36rem] overflow-auto border border-rule bg-sheet"
      >
        <table className="ruled-table">
          <caption className="sr-only">Rows of the block, each cell can be changed</caption>
          <thead>
            <tr>
              <th scope="col">Line</th>
              {columns.map(({ key, label }) => (
                <th key={key} scope="col">
                  {label}
                  {mapping[key]?.unit ? `, ${mapping[key]?.unit}` : ""}
                </th>
              ))}
              <th scope="col">Kept</th>
            </tr>
          </thead>
          <tbody>
            {block.rows.map((row, index) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a row is its place in the block
              <tr key={index}>
                <th scope="row">{row.line}</th>
                {columns.map(({ key, label }) => {
                  const column = mapping[key]?.column ?? null;
                  const cell = refused.get(cellId(index, key));
                  const value = column === null ? (mapping[key]?.constant ?? "") : (row.cells[column] ?? "");
                  return (
                    <td key={key} className={cell ? "outline-2 -outline-offset-2 outline-short" : undefined}>
                      {column === null ? (
                        value
                      ) : (
                        <input
                          id={cellId(index, key)}
                          // A value mended elsewhere must show here too.
                          key={value}
                          defaultValue={value}
                          aria-label={`${label}, line ${row.line}`}
                          aria-invalid={cell ? true : undefined}
                          title={cell ? `${cell.reason} ${cell.fix}` : undefined}
                          className="w-24 bg-transparent px-1 py-1"
                          onBlur={(event) => {
                            if (event.target.value !== value) onCell(index, column, event.target.value);
                          }}
                        />
                      )}
                      {cell ? (
                        <span className="block text-xs font-semibold text-short">✗ refused</span>
                      ) : null}
                    </td>
                  );
                })}
                <td>{bad.has(index) ? "no" : "yes"}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
    </section>
  );
}

function RefusedList({ refused }: { readonly refused: readonly RefusedCell[] }) {
  return (
    <div className="border border-l-4 border-rule border-l-short bg-sheet p-3 text-sm" role="status">
      <p className="font-semibold">
        {refused.length === 1 ? "One cell is refused" : `${refused.length} cells are refused`}. Mend them in
        the table below; the other rows are kept without them.
      </p>
      <ul className="mt-1 list-disc pl-5">
        {refused.slice(0, LISTED).map((cell) => (
          <li key={cellId(cell.row, cell.quantity)}>
            <a className="text-link" href={`#${cellId(cell.row, cell.quantity)}`}>
              Line {cell.line}, {cell.column}
            </a>
            : {cell.reason} {cell.fix}
          </li>
        ))}
      </ul>
      {refused.length > LISTED ? <p>And {refused.length - LISTED} more, marked in the table.</p> : null}
    </div>
  );
}
