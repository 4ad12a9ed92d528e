import { type BlockRow, headingsOf } from "./block-parts";

type Across = { readonly headings: readonly string[]; readonly rows: readonly BlockRow[] };
type Group = { readonly label: string; readonly from: number; readonly width: number };

/** Outdoor temperatures across the top are numbers behind the same words; a stage is named by all of its words. */
const OUTDOORS = /outdoor|outside|ambient|\bodb\b|\boat\b|condenser/i;

/**
 * The same columns again under several headings (outdoor temperatures or stages side by side), written as one line a
 * heading. `null` for a block whose columns stand once.
 */
export function groupsDown(
  head: readonly BlockRow[],
  rows: readonly BlockRow[],
  width: number,
): Across | null {
  for (const [at, line] of head.entries()) {
    const below = headingsOf(head.slice(at + 1), width);
    const groups = groupsIn(line.cells, below, width);
    if (groups.length > 1) return acrossOf(groups, headingsOf(head, width), below, rows);
  }
  return null;
}

/** Neighbouring spans of one width with the same headings below. */
function groupsIn(cells: readonly string[], below: readonly string[], width: number): readonly Group[] {
  const starts = Array.from({ length: width }, (_, column) => column).filter(
    (column) => (cells[column] ?? "") !== "",
  );
  const spans = starts.map((from, at): Group => {
    const until = starts[at + 1] ?? below.findLastIndex((text) => text !== "") + 1;
    return { label: cells[from] ?? "", from, width: until - from };
  });
  const heads = ({ from, width: wide }: Group) => below.slice(from, from + wide).join("\t");
  const last = spans.at(-1);
  if (last === undefined || last.width < 2) return [];
  const like = (one: Group) => one.width === last.width && heads(one) === heads(last);
  return spans.slice(spans.findLastIndex((one) => !like(one)) + 1);
}

function acrossOf(
  groups: readonly Group[],
  headings: readonly string[],
  below: readonly string[],
  rows: readonly BlockRow[],
): Across {
  const [first] = groups;
  const from = first?.from ?? 0;
  const wide = first?.width ?? 0;
  const words = groups.map(({ label }) => label.replace(/[\d.,]+/, "").trim());
  const isOutdoors = OUTDOORS.test(words[0] ?? "") && new Set(words).size === 1;
  const name = isOutdoors ? (words[0] ?? "") : "Title above the columns";
  const cellOf = ({ label }: Group) => (isOutdoors ? (/[\d.,]+/.exec(label)?.[0] ?? label) : label);
  return {
    headings: [...headings.slice(0, from), name, ...below.slice(from, from + wide)],
    rows: rows.flatMap(({ line, cells }) =>
      groups.flatMap((group): BlockRow[] => {
        const own = Array.from({ length: wide }, (_, index) => cells[group.from + index] ?? "");
        if (own.every((cell) => cell === "")) return [];
        const before = Array.from({ length: from }, (_, index) => cells[index] ?? "");
        return [{ line, cells: [...before, cellOf(group), ...own] }];
      }),
    ),
  };
}
