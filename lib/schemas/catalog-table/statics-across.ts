import type { Block, BlockRow } from "./read-block";

const STATIC = /^([\d.,]+)\s*(in\.? ?w\.?[cg]\.?|in\.?|"|pa)?$/i;

/**
 * A fan table with the statics across its top, one setting a line, written as one line a static.
 * Any other block comes back as it is. Lines keep their number, so that a refusal still points at the block.
 */
export function staticsDown(block: Block): Block {
  const across = block.headings.flatMap((heading, index) =>
    STATIC.test(heading.replace(/ \(\d+\)$/, "")) ? [index] : [],
  );
  const [first] = across;
  if (first === undefined || across.length < 2 || first === 0) return block;
  const kept = block.headings.flatMap((_, index) => (across.includes(index) ? [] : [index]));
  return {
    headings: [...kept.map((index) => block.headings[index] ?? ""), "External static", "Airflow"],
    rows: block.rows.flatMap(({ line, cells }): BlockRow[] =>
      across
        .filter((index) => cells[index] !== "")
        .map((index) => ({
          line,
          cells: [...kept.map((one) => cells[one] ?? ""), block.headings[index] ?? "", cells[index] ?? ""],
        })),
    ),
  };
}
