/** What a part of a page is to somebody who listens to it instead of looking at it (PDF structure types). */
export type Tag =
  | "H1"
  | "H2"
  | "H3"
  | "P"
  | "Sect"
  | "L"
  | "LI"
  | "Table"
  | "TR"
  /** A row of heads: its texts become `TH`. */
  | "HeadRow"
  | "TH"
  | "TD"
  | "Figure"
  | "Artifact";

/**
 * Names what an element is, with the words that stand for a picture. Spread, because the library's types do not
 * know the property; `draw-tagged.ts` reads it back from the finished layout.
 */
export function tagged(tag: Tag, alt?: string): { readonly tag: Tag; readonly alt?: string } {
  return alt === undefined ? { tag } : { tag, alt };
}
