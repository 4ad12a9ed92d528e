import { Button } from "@/components/ui/button";
import { Notice } from "@/components/ui/notice";
import {
  type Block,
  cellsToFill,
  fillDown,
  type TableKind,
  type TableMapping,
} from "@/lib/schemas/catalog-table";

type Props = {
  readonly kind: TableKind;
  readonly block: Block;
  readonly mapping: TableMapping;
  readonly onBlock: (block: Block) => void;
};

/** Longest piece of a line that is shown. */
const SHOWN = 60;

/** What was not taken for rows, and the empty cells that merged ones leave: said, and filled only when asked. */
export function BlockNotes({ kind, block, mapping, onBlock }: Props) {
  const empty = cellsToFill(kind, block, mapping);
  return (
    <>
      {block.leftOut.length === 0 ? null : (
        <details className="border border-rule bg-sheet px-4 py-2 text-sm">
          <summary className="cursor-pointer py-1">
            {block.leftOut.length === 1 ? "1 line is" : `${block.leftOut.length} lines are`} no row of the
            table: notes, titles or headings said again
          </summary>
          <ul className="grid gap-1 py-2">
            {block.leftOut.map(({ line, cells }) => (
              <li key={line}>
                Line {line}:{" "}
                {cells
                  .filter((cell) => cell !== "")
                  .join(" ")
                  .slice(0, SHOWN)}
              </li>
            ))}
          </ul>
        </details>
      )}
      {empty.length === 0 ? null : (
        <Notice
          kind="information"
          title={
            empty.length === 1
              ? "1 cell is empty below a filled one."
              : `${empty.length} cells are empty below a filled one.`
          }
          action={
            <Button onClick={() => onBlock(fillDown(block, empty))}>Fill them with what stands above</Button>
          }
        >
          Merged cells of a spreadsheet come like this: what the maker printed once counts for the rows below
          it.
        </Notice>
      )}
    </>
  );
}
