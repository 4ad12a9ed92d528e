/** One tag of an SVG text. */
export type SvgTag = {
  readonly name: string;
  readonly attributes: string;
  readonly kind: "open" | "close" | "empty";
};

/**
 * The tags of an SVG text from top to bottom; `null` when one does not end. Each character is looked at once: an
 * expression that tries every way to read a text takes hours over one that was written for it, and stops everybody's work.
 */
export function tagsOf(svg: string): readonly SvgTag[] | null {
  const tags: SvgTag[] = [];
  for (let at = svg.indexOf("<"); at !== -1; at = svg.indexOf("<", at)) {
    const skipped = afterNoTag(svg, at);
    if (skipped === null) return null;
    if (skipped !== at) {
      at = skipped;
      continue;
    }
    const isClose = svg[at + 1] === "/";
    NAME.lastIndex = at + (isClose ? 2 : 1);
    const name = NAME.exec(svg)?.[0];
    if (name === undefined) {
      at++;
      continue;
    }
    const begin = NAME.lastIndex;
    const end = endOfTag(svg, begin);
    if (end === null) return null;
    const isEmpty = svg[end - 1] === "/";
    tags.push({
      name,
      attributes: svg.slice(begin, isEmpty ? end - 1 : end),
      kind: isClose ? "close" : isEmpty ? "empty" : "open",
    });
    at = end + 1;
  }
  return tags;
}

/** True when the first element is `svg`, with or without a prolog. */
export function beginsWithSvg(head: string): boolean {
  let at = afterBlanks(head, head.startsWith("\uFEFF") ? 1 : 0);
  for (;;) {
    const skipped = afterNoTag(head, at);
    if (skipped === null) return false;
    if (skipped === at) break;
    at = afterBlanks(head, skipped);
  }
  ROOT.lastIndex = at;
  return ROOT.test(head);
}

const NAME = /[\w.:-]+/y;
const ROOT = /<(?:[\w.-]+:)?svg[\s>/]/iy;

/** What begins with `<` and is no tag, with what ends it. */
const NO_TAG = [
  ["<!--", "-->"],
  ["<![CDATA[", "]]>"],
  ["<?", "?>"],
  ["<!", ">"],
] as const;

/** The place after a comment, an instruction or a declaration; the same place where none begins, `null` where one does not end. */
function afterNoTag(text: string, at: number): number | null {
  for (const [begins, ends] of NO_TAG) {
    if (!text.startsWith(begins, at)) continue;
    const end = text.indexOf(ends, at + begins.length);
    return end === -1 ? null : end + ends.length;
  }
  return at;
}

function afterBlanks(text: string, from: number): number {
  let at = from;
  while (at < text.length && /\s/.test(text.charAt(at))) at++;
  return at;
}

/** Where the `>` of a tag stands; one within quotes is text. `null` when there is none. */
function endOfTag(text: string, from: number): number | null {
  for (let at = from; at < text.length; at++) {
    const character = text.charAt(at);
    if (character === ">") return at;
    if (character !== '"' && character !== "'") continue;
    at = text.indexOf(character, at + 1);
    if (at === -1) return null;
  }
  return null;
}
