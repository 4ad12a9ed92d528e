import { getDocument, OPS, type PDFPageProxy } from "pdfjs-dist/legacy/build/pdf.mjs";

/** A piece of text and the box it fills, in points from the page's lower left corner. */
export type PlacedText = {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly bottom: number;
  readonly top: number;
};
export type ReadPage = {
  readonly width: number;
  readonly height: number;
  /** The page's text in reading order, every run of space as one plain space. */
  readonly text: string;
  readonly placed: readonly PlacedText[];
};
export type ReadFont = { readonly name: string; readonly isEmbedded: boolean };

/** Reads a PDF back with a library that had no part in making it. */
export async function readPdf(bytes: Uint8Array) {
  const task = getDocument({ data: bytes.slice(), useSystemFonts: false, verbosity: 0 });
  const pdf = await task.promise;
  const pages: ReadPage[] = [];
  const fonts: ReadFont[] = [];
  const roles = new Set<string>();
  const headings: string[] = [];
  const unread: string[] = [];
  const order: (readonly PlacedText[])[] = [];
  let pictures = 0;
  for (let number = 1; number <= pdf.numPages; number += 1) {
    const page = await pdf.getPage(number);
    pages.push(await readPage(page));
    const operators = await page.getOperatorList();
    fonts.push(...fontsOf(page, operators));
    const structure = await structureOf(page);
    for (const role of structure.roles) roles.add(role);
    headings.push(...structure.headings);
    unread.push(...structure.unread);
    order.push(structure.order);
    pictures += operators.fnArray.filter((fn) => fn === OPS.paintImageXObject).length;
  }
  const info = Object.fromEntries(Object.entries((await pdf.getMetadata()).info));
  const outline = (await pdf.getOutline()) ?? [];
  const isTagged = (await pdf.getMarkInfo())?.Marked === true;
  await task.destroy();
  return {
    pages,
    fonts,
    info,
    isTagged,
    roles: [...roles],
    /** Texts of headings in the order of the structure. */
    headings,
    /** Each page's texts outside of pictures, in the order in which the structure has them read. */
    order,
    /** Text that neither the structure holds nor an artifact covers. */
    unread,
    pictures,
    outline: outline.map((entry) => String(entry.title)),
    text: pages.map((page) => page.text).join(" "),
  };
}

async function readPage(page: PDFPageProxy): Promise<ReadPage> {
  const { width, height } = page.getViewport({ scale: 1 });
  const { items } = await page.getTextContent();
  const texts = items.filter((item) => "str" in item);
  return {
    width,
    height,
    text: texts
      .map((item) => item.str + (item.hasEOL ? "\n" : ""))
      .join("")
      .replaceAll(/\s+/g, " "),
    placed: texts.filter((item) => item.str.trim() !== "").map(placedOf),
  };
}

type TextItem = {
  readonly str: string;
  readonly transform: readonly number[];
  readonly width: number;
  readonly height: number;
};

function placedOf({ str, transform, width, height }: TextItem): PlacedText {
  const [left, bottom] = [transform[4] ?? 0, transform[5] ?? 0];
  return { text: str, left, right: left + width, bottom, top: bottom + height };
}

type StructNode = {
  readonly role?: string;
  readonly children?: readonly StructNode[];
  readonly id?: string;
  readonly type?: string;
};

/** What the page's structure says, and which text has no place in it. */
async function structureOf(page: PDFPageProxy) {
  const tree = (await page.getStructTree()) as StructNode | null;
  const { items } = await page.getTextContent({ includeMarkedContent: true });
  const texts = new Map<string, readonly PlacedText[]>();
  const unread: string[] = [];
  const open: (string | null)[] = [];
  for (const item of items) {
    if ("str" in item) {
      const id = open.findLast((one) => one !== "");
      if (id == null) {
        if (open.length === 0 && item.str.trim() !== "") unread.push(item.str);
      } else texts.set(id, [...(texts.get(id) ?? []), placedOf(item)]);
    } else if (item.type === "endMarkedContent") open.pop();
    else open.push("id" in item && item.id ? String(item.id) : null);
  }
  const roles = new Set<string>();
  const headings: string[] = [];
  const order: PlacedText[] = [];
  const walk = (node: StructNode, heading: boolean) => {
    if (node.role !== undefined) roles.add(node.role);
    if (node.role === "Figure") return;
    const said = texts.get(node.id ?? "") ?? [];
    if (node.type === "content") order.push(...said.filter(({ text }) => text.trim() !== ""));
    const within = heading || /^H\d$/.test(node.role ?? "");
    if (node.type === "content" && within && node.id !== undefined)
      headings.push(
        said
          .map(({ text }) => text)
          .join("")
          .trim(),
      );
    for (const child of node.children ?? []) walk(child, within);
  };
  if (tree) walk(tree, false);
  return { roles: [...roles], headings, unread, order };
}

/** Texts that the structure reads after one that stands below and not left of them. */
export function orderFaults(order: readonly PlacedText[]): readonly string[] {
  return order.slice(1).flatMap((next, at) => {
    const before = order[at];
    const isAbove = before !== undefined && next.bottom > before.top + 1 && next.left < before.right - 1;
    return isAbove ? [`“${next.text}” is read after “${before.text}”, which stands below it`] : [];
  });
}

type Operators = Awaited<ReturnType<PDFPageProxy["getOperatorList"]>>;

function fontsOf(page: PDFPageProxy, { fnArray, argsArray }: Operators): readonly ReadFont[] {
  const ids = argsArray.filter((_, index) => fnArray[index] === OPS.setFont).map(([id]) => String(id));
  return [...new Set(ids)].map((id) => {
    const font = page.commonObjs.get(id);
    return { name: font.name, isEmbedded: font.missingFile !== true };
  });
}

/** Pairs of texts that print over each other by more than a hair. */
export function overlaps(page: ReadPage): readonly string[] {
  const found: string[] = [];
  for (const [index, a] of page.placed.entries()) {
    for (const b of page.placed.slice(index + 1)) {
      const across = Math.min(a.right, b.right) - Math.max(a.left, b.left);
      const down = Math.min(a.top, b.top) - Math.max(a.bottom, b.bottom);
      if (across > 1 && down > 2) found.push(`“${a.text}” over “${b.text}”`);
    }
  }
  return found;
}
