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
    ...block,
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

const STATIC_HEADING = /static|\besp\b|pressure/i;
const NOT_AIRFLOW = /watt|power|\bk?w\b|rpm|amp/i;

/**
 * A fan table with the settings across its top and the statics down its side, written as one line a setting and static.
 * Any other block comes back as it is.
 */
export function settingsDown(block: Block): Block {
  const statics = block.headings.flatMap((heading, index) => (STATIC_HEADING.test(heading) ? [index] : []));
  const [side] = statics;
  const across = block.headings.flatMap((_, index) => (index === side ? [] : [index]));
  const isAirflow = (index: number) => {
    const cells = block.rows.map((row) => row.cells[index] ?? "").filter((cell) => cell !== "");
    return (
      !NOT_AIRFLOW.test(block.headings[index] ?? "") &&
      cells.filter((cell) => /^\d/.test(cell)).length * 2 > cells.length
    );
  };
  if (side === undefined || statics.length > 1 || across.length < 2 || !across.every(isAirflow)) return block;
  return {
    ...block,
    headings: ["Airflow setting", block.headings[side] ?? "", "Airflow"],
    rows: block.rows.flatMap(({ line, cells }): BlockRow[] =>
      across
        .filter((index) => cells[index] !== "")
        .map((index) => ({
          line,
          cells: [block.headings[index] ?? "", cells[side] ?? "", cells[index] ?? ""],
        })),
    ),
  };
}

/** A fan table of any shape as one line a setting and static. */
export function fanLines(block: Block): Block {
  return settingsDown(staticsDown(block));
}
