import type { LaidOut } from "@/lib/reports/draw-tagged";
import type { Pages } from "@/lib/reports/render-pdf";

const isTable = ({ props }: LaidOut) => props?.tag === "Table";
const isHead = ({ props }: LaidOut) => props?.tag === "HeadRow";
/** The library takes the bookmark from every part of an element but the first. */
const goesOn = ({ props }: LaidOut) => props !== undefined && "bookmark" in props && props.bookmark === null;

/** Heads of tables that a page leaves without a row, and tables that go on over a page without their head. */
export function tableFaults({ children: pages }: Pages): readonly string[] {
  let open: LaidOut | null = null;
  return pages.flatMap((page, at) => {
    const tables = tablesIn(page);
    const faults = tables.flatMap((table) => {
      const parts = table.children ?? [];
      const heads = parts.filter(isHead);
      const before = goesOn(table) ? open : null;
      open = table;
      return [
        ...(heads.length > 0 && heads.length === parts.length ? ["a table’s head without a row"] : []),
        ...(before !== null && before.children?.some(isHead) === true && heads.length === 0
          ? ["a table that goes on without its head"]
          : []),
        ...heads.flatMap((head) => (wordsOf(head).trim() === "" ? ["a table’s head without words"] : [])),
      ];
    });
    return faults.map((fault) => `page ${at + 1}: ${fault}`);
  });
}

function tablesIn(node: LaidOut): readonly LaidOut[] {
  if (isTable(node)) return [node];
  return (node.children ?? []).flatMap(tablesIn);
}

function wordsOf(node: LaidOut): string {
  const { lines } = node as { readonly lines?: readonly { readonly string: string }[] };
  return (lines ?? []).map(({ string }) => string).join(" ") + (node.children ?? []).map(wordsOf).join(" ");
}
