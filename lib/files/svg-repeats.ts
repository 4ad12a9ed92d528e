import type { SvgTag } from "./svg-tags";

/** A logo repeats a part a few hundred times at most, such as the dots of a pattern. */
const MOST_DRAWN = 5_000;
/** And holds its parts within a few dozen others. */
const DEEPEST = 200;

/**
 * Whether the parts of an SVG that stand for other parts of it (`use`) unfold into more than anybody draws, or into
 * themselves. A few lines that refer to each other ten times each are billions of shapes, and drawing them cannot be
 * interrupted.
 */
export function unfoldsTooFar(tags: readonly SvgTag[]): boolean {
  const uses = new Map<string, string[]>();
  const open: string[] = [];
  let used = 0;
  for (const { kind, name, attributes } of tags) {
    if (kind === "close") {
      open.pop();
      continue;
    }
    open.push(/\sid\s*=\s*["']([^"']*)["']/.exec(attributes)?.[1] ?? "");
    if (open.length > DEEPEST) return true;
    const target = /(?:^|:)use$/.test(name)
      ? /href\s*=\s*["']\s*#([^"']*)["']/.exec(attributes)?.[1]?.trim()
      : undefined;
    if (target !== undefined) {
      if (++used > MOST_DRAWN) return true;
      // The whole picture stands under the empty name.
      for (const within of new Set(["", ...open])) {
        const known = uses.get(within);
        if (known === undefined) uses.set(within, [target]);
        else known.push(target);
      }
    }
    if (kind === "empty") open.pop();
  }
  return drawnOf("", uses, new Map(), new Set()) > MOST_DRAWN;
}

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
