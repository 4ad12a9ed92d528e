/** A line taken apart; it keeps the line it stood on, from 1, so that a refusal can name it. */
export type BlockRow = { readonly line: number; readonly cells: readonly string[] };

/** Deepest head that makers print: what it is of, the quantity, the state, the unit. */
const MOST_HEAD_LINES = 4;

const UNIT =
  /^[([]?\s*(°?\s?[cf]|deg\.? ?[cf]|cfm|l\/s|m[³3]\/[hs]|kw|w|watts?|k?m?btu\/?hr?|mbh|tons?|pa|in\.? ?w\.?[cg]\.?|%)?\s*[)\]]?$/i;
const NOTE = /^(notes?\b|remarks?\b|\*|†|‡|\(\w\)|\[\w\])/i;

const filled = (cells: readonly string[]) => cells.filter((cell) => cell !== "");
const isNumber = (cell: string) => /^[+-]?[\d.,]*\d/.test(cell);

function isUnitLine(cells: readonly string[]): boolean {
  return filled(cells).length > 0 && cells.every((cell) => UNIT.test(cell));
}

/** A heading of statics across: words first, then a rising run of small numbers. */
function isWideHead(cells: readonly string[]): boolean {
  const [first = "", ...rest] = cells;
  const numbers = filled(rest).map((cell) => Number.parseFloat(cell));
  return (
    /^\D*$/.test(first) &&
    /set|tap|speed|static|esp/i.test(first) &&
    numbers.length > 1 &&
    numbers.every((value, index) => Number.isFinite(value) && value > (numbers[index - 1] ?? -1))
  );
}

/** The lines that name the columns, from the top, and where the rows begin. */
export function headOf(rows: readonly BlockRow[]): {
  readonly head: readonly BlockRow[];
  readonly begin: number;
} {
  const first = rows.findIndex(({ cells }) => {
    const words = filled(cells);
    const numbers = words.filter((cell) => /^[+-]?[\d.,]+/.test(cell));
    return words.length > 1 && numbers.length * 2 >= words.length && !isWideHead(cells);
  });
  if (first <= 0) {
    // No line is mostly numbers: the first is the head, with the units below it where they stand alone.
    const end = rows[1] !== undefined && isUnitLine(rows[1].cells) ? 2 : 1;
    return { head: rows.slice(0, end), begin: end };
  }
  let top = first - 1;
  const belongs = (at: number) => {
    const cells = rows[at]?.cells ?? [];
    return filled(cells).length > 1 && !cells.some((cell) => NOTE.test(cell)) && !isWideHead(cells);
  };
  if (!isWideHead(rows[top]?.cells ?? []))
    while (top > 0 && first - top < MOST_HEAD_LINES && belongs(top - 1)) top--;
  return { head: rows.slice(top, first), begin: first };
}

/** One heading a column. Words over several columns (merged cells) count for each of them that says more below. */
export function headingsOf(head: readonly BlockRow[], width: number): readonly string[] {
  const lines = head.map(({ cells }, at) => {
    const below = head[at + 1];
    let over = "";
    return Array.from({ length: width }, (_, column) => {
      const own = cells[column] ?? "";
      if (own !== "") over = own;
      const saysMore = (below?.cells[column] ?? "") !== "" && !isUnitLine(below?.cells ?? []);
      return own === "" && saysMore ? over : own;
    });
  });
  return Array.from({ length: width }, (_, column) =>
    lines
      .map((line) => line[column] ?? "")
      .filter((part) => part !== "")
      .join(" "),
  );
}

export type Parted = {
  readonly rows: readonly BlockRow[];
  /** Lines that are no rows: notes, titles and headings said again. */
  readonly leftOut: readonly BlockRow[];
  /** What stood above each row as the title of its part of the block; `null` when nothing parts it. */
  readonly titles: readonly string[] | null;
  /** The line of headings of a table with other columns, which one mapping cannot read. */
  readonly otherTable: BlockRow | null;
};

/** Parts rows from what stands between and below them. `above` are the lines over the head. */
export function partsOf(
  above: readonly BlockRow[],
  head: readonly BlockRow[],
  body: readonly BlockRow[],
): Parted {
  const known = new Set(head.map(({ cells }) => sameLine(cells)));
  const rows: BlockRow[] = [];
  const titles: string[] = [];
  const leftOut: BlockRow[] = [];
  let title = titleOf(above.at(-1));
  let otherTable: BlockRow | null = null;
  for (const line of body) {
    const words = filled(line.cells);
    const isNote = NOTE.test(words[0] ?? "") || (words.length === 1 && !isNumber(words[0] ?? ""));
    const isWords = !words.some(isNumber);
    if (!isNote && !isWords) {
      rows.push(line);
      titles.push(title);
      continue;
    }
    leftOut.push(line);
    if (isNote) title = titleOf(line);
    else if (!known.has(sameLine(line.cells)) && !isUnitLine(line.cells) && words.length > 2)
      otherTable ??= line;
  }
  const parts = new Set(titles);
  return { rows, leftOut, titles: parts.size > 1 && !parts.has("") ? titles : null, otherTable };
}

const sameLine = (cells: readonly string[]) => filled(cells).join("\t").toLowerCase();

/** `Stage: Low` is named “Low”. */
function titleOf(line: BlockRow | undefined): string {
  const [only = "", ...more] = filled(line?.cells ?? []);
  if (more.length > 0) return "";
  return only.replace(/^(capacity setting|stage|setting|tap|table)\s*[:=–-]\s*/i, "").slice(0, 100);
}
