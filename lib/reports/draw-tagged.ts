import type { Tag } from "./parts/tags";

/** The part of a laid-out element that tagging needs; the library's own types differ for each kind of element. */
export type LaidOut = {
  readonly type: string;
  readonly props?: { readonly tag?: Tag; readonly alt?: string };
  readonly box?: unknown;
  readonly style?: unknown;
  readonly children?: readonly LaidOut[];
};

type Element = { add: (child: unknown) => Element; end: () => void };
type Options = { readonly alt?: string };

/** What is used of the PDF writer (pdfkit); its package carries no types. */
export type TagWriter = {
  struct: (type: string, options?: Options) => Element;
  addStructure: (element: Element) => unknown;
  markContent: (tag: string) => unknown;
  markStructureContent: (tag: string) => unknown;
  endMarkedContent: () => unknown;
};

const GROUPS: ReadonlySet<string> = new Set(["Sect", "L", "LI", "Table", "TR", "HeadRow"]);
/** What the parts of a row are. */
type InRow = "TD" | "TH" | null;

/**
 * The same pages with marks between their elements, so that the file carries its structure: headings, paragraphs,
 * lists, tables and pictures in reading order. Whatever has no part in it (rules, grounds, running heads) is
 * marked as an artifact, which readers pass over.
 *
 * The library draws without tags, but it draws its elements one after the other and names the place of each that
 * has an id to the writer. An empty element before and one after each text, its id a function, is all that is
 * needed: {@link callMarks} makes the writer call it. (A canvas element would serve too, at ten times the cost.)
 */
export function withTags(pages: readonly LaidOut[], writer: TagWriter): readonly LaidOut[] {
  const root = writer.struct("Document");
  writer.addStructure(root);
  return pages.map((page) => ({
    ...page,
    children: [
      mark(() => writer.markContent("Artifact")),
      ...marked(page.children ?? [], root, null, writer),
      mark(() => writer.endMarkedContent()),
    ],
  }));
}

function marked(
  nodes: readonly LaidOut[],
  parent: Element,
  inRow: InRow,
  writer: TagWriter,
): readonly LaidOut[] {
  return nodes.flatMap((node) => {
    const { tag, alt } = node.props ?? {};
    if (tag === "Artifact") return [node];
    if (node.type === "TEXT")
      return hasWords(node) ? leaf(node, tag ?? inRow ?? "P", {}, parent, writer) : [node];
    if (alt !== undefined) return leaf(node, "Figure", { alt }, parent, writer);
    if (node.type === "SVG" || node.children === undefined) return [node];
    if (inRow !== null) return cell(node, inRow, parent, writer);
    if (tag !== undefined && GROUPS.has(tag)) {
      const group = writer.struct(tag === "HeadRow" ? "TR" : tag);
      parent.add(group);
      const within = tag === "TR" ? "TD" : tag === "HeadRow" ? "TH" : null;
      return [{ ...node, children: marked(node.children, group, within, writer) }];
    }
    return [{ ...node, children: marked(node.children, parent, inRow, writer) }];
  });
}

/** A cell of a table that holds more than one text. */
function cell(node: LaidOut, tag: Tag, parent: Element, writer: TagWriter): readonly LaidOut[] {
  const element = writer.struct(tag);
  parent.add(element);
  return [{ ...node, children: marked(node.children ?? [], element, null, writer) }];
}

function leaf(
  node: LaidOut,
  tag: Tag,
  options: Options,
  parent: Element,
  writer: TagWriter,
): readonly LaidOut[] {
  const element = writer.struct(tag, options);
  parent.add(element);
  return [
    mark(() => {
      writer.endMarkedContent();
      element.add(writer.markStructureContent(tag));
    }),
    node,
    mark(() => {
      writer.endMarkedContent();
      writer.markContent("Artifact");
    }),
  ];
}

function hasWords(node: LaidOut): boolean {
  return (node.children ?? []).length > 0;
}

function mark(paint: () => void): LaidOut {
  return { type: "VIEW", props: { id: paint } as LaidOut["props"], box: SPOT, style: {}, children: [] };
}

const SPOT = { top: 0, left: 0, width: 0, height: 0 };

type Destinations = { addNamedDestination: (name: unknown, ...rest: unknown[]) => unknown };

/** Makes a writer call the marks that {@link withTags} has put between the elements. */
export function callMarks(writer: Destinations): void {
  const name = writer.addNamedDestination.bind(writer);
  writer.addNamedDestination = (id, ...rest) => (typeof id === "function" ? id() : name(id, ...rest));
}
