import { partOf } from "./text-codes";

const LINE_FEED = 10;
const RETURN = 13;
const BLANK = 32;
const DELETE = 127;

/** Where the cells of a text stand. */
export type Places = {
  /** Where each cell begins. */
  readonly starts: Uint32Array;
  /** The first cell of each row, and one more. */
  readonly firsts: Uint32Array;
  readonly ends: Uint32Array;
  readonly lines: Uint32Array;
  readonly rowCount: number;
};

/**
 * Finds the cells of a text without quotes: a line is a row, unless nothing but blanks is in it.
 *
 * @param text - In UTF-8.
 */
export function placesIn(text: Uint8Array, delimiter: number): Places {
  const { length } = text;
  // Grown where needed; a logger's cell has five characters or so, its row fifty.
  let starts = new Uint32Array(Math.ceil(length / 4) + 16);
  let firsts = new Uint32Array(Math.ceil(length / 32) + 16);
  let ends = new Uint32Array(firsts.length);
  let lines = new Uint32Array(firsts.length);
  let line = 0;
  let rowCount = 0;
  let cellCount = 0;
  let at = 0;
  while (at <= length) {
    line++;
    const begin = at;
    const before = cellCount;
    let hasInk = false;
    let code = 0;
    if (cellCount + 1 >= starts.length) starts = larger(starts);
    starts[cellCount++] = at;
    for (; at < length; at++) {
      code = text[at] ?? 0;
      if (code === delimiter) {
        if (cellCount >= starts.length) starts = larger(starts);
        starts[cellCount++] = at + 1;
      } else if (code <= BLANK) {
        if (code === LINE_FEED || code === RETURN) break;
      } else if (code < DELETE) hasInk = true;
    }
    // "Blank" is what trim() takes away, which is more than the space.
    if (hasInk || partOf(text, begin, at).trim() !== "") {
      if (rowCount + 1 >= firsts.length)
        [firsts, ends, lines] = [larger(firsts), larger(ends), larger(lines)];
      firsts[rowCount] = before;
      ends[rowCount] = at;
      lines[rowCount] = line;
      rowCount++;
    } else cellCount = before;
    at += code === RETURN && at < length && text[at + 1] === LINE_FEED ? 2 : 1;
  }
  firsts[rowCount] = cellCount;
  return { starts, firsts, ends, lines, rowCount };
}

function larger(list: Uint32Array<ArrayBuffer>): Uint32Array<ArrayBuffer> {
  const grown = new Uint32Array(2 * list.length);
  grown.set(list);
  return grown;
}
