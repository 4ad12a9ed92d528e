import type { LaidOut } from "@/lib/reports/draw-tagged";
import type { Pages } from "@/lib/reports/render-pdf";

type Placed = LaidOut & {
  readonly props?: { readonly fixed?: boolean };
  readonly box?: { readonly top: number; readonly height: number };
  readonly lines?: readonly { readonly string: string }[];
  readonly style?: { readonly position?: string };
};
/** A text that stands in the flow of its page. */
type Words = { readonly says: string; readonly isHeading: boolean; readonly bottom: number };

/** A page but the last that ends above this share of its height was left to a few lines that found no room before. */
const LEAST_FILLED = 0.3;

/** Headings that a page leaves behind at its foot, and pages left to a few lines. */
export function flowFaults({ children }: Pages): readonly string[] {
  const pages = children as readonly Placed[];
  return pages.slice(0, -1).flatMap((page, at) => {
    const words = wordsIn(page, 0, false);
    const last = words.at(-1);
    if (last === undefined) return [`page ${at + 1}: nothing on it`];
    const lowest = Math.max(...words.map(({ bottom }) => bottom));
    return [
      ...(last.isHeading ? [`page ${at + 1}: the heading “${last.says}” without what it heads`] : []),
      ...(lowest < LEAST_FILLED * (page.box?.height ?? 0) ? [`page ${at + 1}: almost empty`] : []),
    ];
  });
}

function wordsIn(node: Placed, above: number, inHeading: boolean): readonly Words[] {
  const { props, box, lines, style } = node;
  if (props?.fixed === true || style?.position === "absolute" || props?.tag === "Artifact") return [];
  const top = above + (box?.top ?? 0);
  const isHeading = inHeading || props?.tag === "H2" || props?.tag === "H3";
  if (node.type === "SVG" || node.type === "IMAGE")
    return [{ says: "picture", isHeading: false, bottom: top + (box?.height ?? 0) }];
  if (lines !== undefined) {
    const says = lines
      .map(({ string }) => string)
      .join(" ")
      .trim();
    return says === "" ? [] : [{ says, isHeading, bottom: top + (box?.height ?? 0) }];
  }
  const children = (node.children ?? []) as readonly Placed[];
  return children.flatMap((child) => wordsIn(child, node.type === "PAGE" ? 0 : top, isHeading));
}
