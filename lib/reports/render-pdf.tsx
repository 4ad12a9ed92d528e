import layoutDocument from "@react-pdf/layout";
import drawDocument from "@react-pdf/render";
import { type DocumentProps, Font, pdf } from "@react-pdf/renderer";
import PDFDocument from "pdfkit";
import type { ReactElement } from "react";
import { callMarks, type LaidOut, type TagWriter, withTags } from "./draw-tagged";

type Writer = TagWriter &
  NodeJS.ReadableStream & {
    _root: { data: Record<string, unknown> };
    _font: unknown;
    addNamedDestination: (name: unknown, ...rest: unknown[]) => unknown;
    font: (source: unknown, size?: number) => unknown;
    fontSize: (size: number) => unknown;
  };
/** Every element of every page in its place. */
export type Pages = { readonly children: readonly LaidOut[] };
type Layout = (document: unknown, fonts: typeof Font) => Promise<Pages>;
type Draw = (writer: Writer, document: object) => Writer;
type Facts = Pick<
  DocumentProps,
  "title" | "author" | "subject" | "keywords" | "creator" | "producer" | "language" | "creationDate"
>;

/**
 * A document as PDF bytes, tagged. The same document gives the same bytes.
 *
 * The library's own way to bytes makes a writer that cannot be told to tag, so its three steps (elements, layout,
 * drawing) are called one by one, with a writer of ours.
 */
export async function renderPdf(document: ReactElement<DocumentProps>): Promise<Uint8Array> {
  return drawPdf(document.props, await layOut(document));
}

/** The bytes of pages that are laid out already. */
export function drawPdf(facts: Facts, laidOut: Pages): Promise<Uint8Array> {
  const writer = newWriter(facts);
  const done = bytesOf(writer);
  (drawDocument as unknown as Draw)(writer, { ...laidOut, children: withTags(laidOut.children, writer) });
  return done;
}

/** The pages of a document with every element's place, before anything is drawn. */
export function layOut(document: ReactElement<DocumentProps>): ReturnType<Layout> {
  return (layoutDocument as unknown as Layout)(pdf(document).container.document, Font);
}

function newWriter(facts: Facts): Writer {
  const { language, title, author, subject, keywords, creator, producer, creationDate } = facts;
  const writer = new PDFDocument({
    compress: true,
    pdfVersion: "1.7",
    lang: language,
    displayTitle: true,
    tagged: true,
    autoFirstPage: false,
    info: {
      Title: title,
      Author: author,
      Subject: subject,
      Keywords: keywords,
      Creator: creator,
      Producer: producer,
      CreationDate: creationDate,
    },
  }) as unknown as Writer;
  writer._root.data.PageMode = "UseOutlines";
  callMarks(writer);
  rememberFonts(writer);
  return writer;
}

/** The writer compares a font with all it knows, table by table, at each piece of text; here it is asked once each. */
function rememberFonts(writer: Writer): void {
  const choose = writer.font.bind(writer);
  const known = new Map<unknown, unknown>();
  writer.font = (source, size) => {
    const font = known.get(source);
    if (font === undefined) {
      choose(source, size);
      known.set(source, writer._font);
      return writer;
    }
    writer._font = font;
    if (size !== undefined) writer.fontSize(size);
    return writer;
  };
}

async function bytesOf(writer: Writer): Promise<Uint8Array> {
  const parts: Buffer[] = [];
  for await (const part of writer) parts.push(Buffer.isBuffer(part) ? part : Buffer.from(part));
  const { buffer, byteOffset, byteLength } = Buffer.concat(parts);
  return new Uint8Array(buffer, byteOffset, byteLength);
}
