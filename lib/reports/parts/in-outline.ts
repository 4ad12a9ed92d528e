/**
 * Puts an element into the PDF's outline. Spread, because the library's types know the property for pages only,
 * while it serves every element.
 */
export function inOutline(title: string): { readonly bookmark: string } {
  return { bookmark: title };
}
