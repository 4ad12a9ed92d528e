import type { DocumentProps } from "@react-pdf/renderer";
import { getDocument, type PDFPageProxy } from "pdfjs-dist/legacy/build/pdf.mjs";
import type { ReactElement } from "react";
import { layOut, type Pages } from "@/lib/reports/render-pdf";
import { flowFaults } from "./flow-faults";
import { tableFaults } from "./table-faults";

/** What is looked at of an element that the library has laid out. */
type Placed = {
  readonly type: string;
  readonly box?: Readonly<Record<"top" | "left" | "width" | "height", number>>;
  readonly style?: { readonly position?: string; readonly flexDirection?: string };
  readonly lines?: readonly Line[];
  readonly value?: string;
  readonly wasSplit?: boolean;
  readonly children?: readonly Placed[];
};
type Line = {
  readonly string: string;
  readonly xAdvance: number;
  readonly height: number;
  readonly runs: readonly { readonly positions: readonly { readonly xAdvance: number }[] }[];
};
type Box = Required<Placed>["box"];

/** More than the library's own roundings, less than anybody sees, points. */
const HAIR = 0.7;

/**
 * Texts that do not fit their boxes, boxes that reach out of theirs, and neighbours that lie over each other: of the
 * finished layout, so that also what a reader of the file could not see is found.
 */
export async function layoutFaults(document: ReactElement<DocumentProps>): Promise<readonly string[]> {
  return faultsOfPages(await layOut(document));
}

/** The same of pages that are laid out already. */
export function faultsOfPages(pages: Pages): readonly string[] {
  const { children } = pages as unknown as { readonly children: readonly Placed[] };
  return [
    ...children.flatMap((page, at) => faultsIn(page).map((fault) => `page ${at + 1}: ${fault}`)),
    ...tableFaults(pages),
    ...flowFaults(pages),
  ];
}

function faultsIn(node: Placed): readonly string[] {
  if (node.type === "TEXT") return textFaults(node);
  // Drawings have no boxes inside; what they draw is looked at in the pictures.
  if (node.type === "SVG" || node.children === undefined || node.box === undefined) return [];
  const { box } = node;
  const inFlow = node.children.filter((one) => one.style?.position !== "absolute" && one.box !== undefined);
  const boxes = inFlow.map((one) => ({ ...(one.box as Box), says: wordsOf(one) }));
  const outside = boxes.filter(
    (one) =>
      // A band reaches over the margins on purpose, by the same measure on the left.
      one.left >= 0 && (one.left + one.width > box.width + HAIR || one.top + one.height > box.height + HAIR),
  );
  const isRow = node.style?.flexDirection === "row";
  const over = boxes.filter((one, at) =>
    boxes
      .slice(at + 1)
      .some(
        (other) =>
          shared(one.left, one.width, other.left, other.width) > HAIR &&
          shared(one.top, one.height, other.top, other.height) > HAIR,
      ),
  );
  return [
    ...outside.map(({ says }) => `“${says}” reaches out of its ${isRow ? "row" : "box"}`),
    ...over.map(({ says }) => `“${says}” lies over its neighbour`),
    ...node.children.flatMap(faultsIn),
  ];
}

const letters = (text: string) => text.replaceAll(/\s/g, "");

function textFaults({ box, lines = [], children = [], wasSplit }: Placed): readonly string[] {
  const words = letters(children.map(({ value = "" }) => value).join(""));
  const drawn = letters(lines.map(({ string }) => string).join(""));
  // One that goes on over the page is whole in its parts; one that may be cut says so with an ellipsis.
  if (wasSplit !== true && drawn.length < words.length && !drawn.endsWith("…"))
    return [`“${words.slice(0, 60)}” is lost from its letter ${drawn.length} on`];
  if (box === undefined || lines.length === 0) return [];
  const wide = lines.filter((line) => widthOf(line) > box.width + HAIR);
  const high = lines.reduce((sum, { height }) => sum + height, 0);
  return [
    ...wide.map(({ string }) => `“${string}” is wider than its box`),
    ...(high > box.height + HAIR ? [`“${lines[0]?.string}” is higher than its box`] : []),
  ];
}

/** Without the space after the last word, which may hang over. */
function widthOf({ string, xAdvance, runs }: Line): number {
  if (string.trim() === "") return 0;
  const hanging = string.length - string.trimEnd().length;
  const ends = runs
    .flatMap(({ positions }) => positions)
    .slice(hanging === 0 ? Number.POSITIVE_INFINITY : -hanging);
  return xAdvance - ends.reduce((sum, one) => sum + one.xAdvance, 0);
}

function wordsOf(node: Placed): string {
  const own = node.lines?.map(({ string }) => string).join(" ") ?? "";
  return (own + (node.children ?? []).map(wordsOf).join(" ")).trim().slice(0, 60);
}

const shared = (from: number, length: number, other: number, otherLength: number) =>
  Math.min(from + length, other + otherLength) - Math.max(from, other);

/** Pixels a point: enough to see a letter's edge, little enough for many pages. */
const SCALE = 1.5;

type Picture = { readonly width: number; readonly height: number; readonly data: Uint8ClampedArray };

/**
 * Faults seen on the pages as pictures, drawn by a library that had no part in making them: ink where paper has to
 * stay white, and ink that is cut. A page is drawn twice, as it is and with nothing clipped; what differs was cut.
 */
export async function pictureFaults(bytes: Uint8Array, every = 1): Promise<readonly string[]> {
  const task = getDocument({ data: bytes.slice(), useSystemFonts: false, verbosity: 0 });
  const pdf = await task.promise;
  const faults: string[] = [];
  for (let number = 1; number <= pdf.numPages; number += every) {
    const page = await pdf.getPage(number);
    const whole = await pictureOf(pdf.canvasFactory as CanvasFactory, page, false);
    const unclipped = await pictureOf(pdf.canvasFactory as CanvasFactory, page, true);
    const cut = cutAt(whole, unclipped);
    if (cut !== null) faults.push(`page ${number}: something is cut ${cut}`);
    for (const fault of inkInMargins(whole)) faults.push(`page ${number}: ${fault}`);
  }
  await task.destroy();
  return faults;
}

type CanvasFactory = {
  readonly create: (
    width: number,
    height: number,
  ) => { readonly canvas: HTMLCanvasElement; readonly context: CanvasRenderingContext2D };
};

async function pictureOf(factory: CanvasFactory, page: PDFPageProxy, unclipped: boolean): Promise<Picture> {
  const viewport = page.getViewport({ scale: SCALE });
  const { canvas, context } = factory.create(Math.round(viewport.width), Math.round(viewport.height));
  if (unclipped) Object.assign(context, { clip: () => undefined });
  await page.render({ canvas, canvasContext: context, viewport }).promise;
  return context.getImageData(0, 0, canvas.width, canvas.height);
}

/** So much difference of one colour is more than the softened edge of a picture. */
const DIFFERENT = 96;
/**
 * Pixels that differ beside and below each other over three points: a part of a letter. A rule, whose clipped half is
 * no loss, is thinner than that.
 */
const SPOT = [-2, -1, 0, 1, 2] as const;

function cutAt(one: Picture, other: Picture): string | null {
  const { width } = one;
  const differs = (pixel: number) =>
    [0, 1, 2].some(
      (colour) =>
        Math.abs((one.data[pixel * 4 + colour] ?? 0) - (other.data[pixel * 4 + colour] ?? 0)) > DIFFERENT,
    );
  for (let pixel = 0; pixel < one.data.length / 4; pixel += 1) {
    if (!differs(pixel)) continue;
    const rows = SPOT.filter((down) => SPOT.some((right) => differs(pixel + down * width + right)));
    const columns = SPOT.filter((right) => SPOT.some((down) => differs(pixel + down * width + right)));
    if (rows.length === SPOT.length && columns.length === SPOT.length)
      return `near ${pt(pixel % width)}, ${pt(pixel / width)} pt from the upper left`;
  }
  return null;
}

const pt = (pixels: number) => Math.floor(pixels / SCALE);

/** Points from the edges that stay white: left of the numbers, right of the text, above and below. */
const WHITE = { left: 24, right: 50, top: 12, bottom: 12 } as const;
/** The rules along the margin run from edge to edge. */
const RULES = { from: 46, to: 54 } as const;
const PAPER = 246;

function inkInMargins({ width, height, data }: Picture): readonly string[] {
  const found = new Set<string>();
  const isInk = (x: number, y: number) =>
    [0, 1, 2].some((colour) => (data[(y * width + x) * 4 + colour] ?? 255) < PAPER);
  for (let y = 0; y < height; y += 1) {
    // A band runs from edge to edge: its line is not white at either.
    if (isInk(1, y) && isInk(width - 2, y)) continue;
    for (let x = 0; x < width; x += 1) {
      if (pt(x) >= RULES.from && pt(x) <= RULES.to) continue;
      const where =
        pt(x) < WHITE.left
          ? "left"
          : pt(width - x) < WHITE.right
            ? "right"
            : pt(y) < WHITE.top
              ? "upper"
              : pt(height - y) < WHITE.bottom
                ? "lower"
                : null;
      if (where !== null && isInk(x, y)) found.add(`ink in the ${where} margin`);
    }
  }
  return [...found];
}
