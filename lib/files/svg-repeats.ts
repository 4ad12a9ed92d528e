/** A logo repeats a part a few hundred times at most, such as the dots of a pattern. */
const MOST_DRAWN = 5_000;

const TAG = /<(\/?)((?:[\w.-]+:)?[\w.-]+)((?:[^>"']|"[^"]*"|'[^']*')*)>/g;

/**
 * Whether the parts of an SVG that stand for other parts of it (`use`) unfold into more than anybody draws, or into
 * themselves. A few lines that refer to each other ten times each are billions of shapes, and drawing them cannot be
 * interrupted.
 */
export function unfoldsTooFar(svg: string): boolean {
  const uses = new Map<string, string[]>();
  const open: string[] = [];
  for (const [, closing, name = "", attributes = ""] of svg.replaceAll(COMMENTS, "").matchAll(TAG)) {
    if (closing === "/") {
      open.pop();
      continue;
    }
    const id = /\sid\s*=\s*["']([^"']*)["']/.exec(attributes)?.[1] ?? "";
    open.push(id);
    const target = /(?:^|:)use$/.test(name)
      ? /href\s*=\s*["']\s*#([^"']*?)\s*["']/.exec(attributes)?.[1]
      : undefined;
    // The whole picture stands under the empty name.
    if (target !== undefined)
      for (const within of new Set(["", ...open])) uses.set(within, [...(uses.get(within) ?? []), target]);
    if (attributes.endsWith("/")) open.pop();
  }
  return drawnOf("", uses, new Map(), new Set()) > MOST_DRAWN;
}

const COMMENTS = /<!--[\s\S]*?-->|<!\[CDATA\[[\s\S]*?\]\]>|<\?[\s\S]*?\?>/g;

/** How many parts are drawn for one; infinitely many when it holds itself. */
function drawnOf(
  id: string,
  uses: ReadonlyMap<string, readonly string[]>,
  known: Map<string, number>,
  above: Set<string>,
): number {
  if (above.has(id)) return Number.POSITIVE_INFINITY;
  const found = known.get(id);
  if (found !== undefined) return found;
  above.add(id);
  const drawn = (uses.get(id) ?? []).reduce((sum, target) => sum + drawnOf(target, uses, known, above), 1);
  above.delete(id);
  known.set(id, drawn);
  return drawn;
}
