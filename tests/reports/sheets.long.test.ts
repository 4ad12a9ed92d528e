import { mkdir, writeFile } from "node:fs/promises";
import { beforeAll, describe, expect, test, vi } from "vitest";
import { COLUMNS, type LedgerLine } from "@/lib/domain/ledger";
import { STAGE_NAMES, STAGES } from "@/lib/domain/stages";
import { renderView } from "@/lib/reports/render-view";
import type { SheetView } from "@/lib/reports/sheet/view";
import { homeownerPacketView } from "@/lib/services/homeowner-packet-view";
import { crewPacketView } from "@/lib/services/packet-views/crew";
import { filePacketView } from "@/lib/services/packet-views/file";
import { reviewPacketView } from "@/lib/services/packet-views/review";
import { FULL_JOB } from "../support/full-job";
import { PLAIN_BRAND, packetPartsOf, packetPhotosOf } from "../support/packet-parts";
import { overlaps, readPdf } from "./read-pdf";

vi.setConfig({ testTimeout: 120_000, hookTimeout: 120_000 });

type Read = Awaited<ReturnType<typeof readPdf>>;

async function printed(name: string, bytes: Uint8Array): Promise<Read> {
  await mkdir(".tmp/packets", { recursive: true });
  await writeFile(`.tmp/packets/${name}.pdf`, bytes);
  return readPdf(bytes);
}

/** Holds for every packet, whatever is in it. */
function expectSound({ pages, fonts, isTagged, unread }: Read): void {
  for (const [index, page] of pages.entries()) {
    const outside = page.placed.filter(
      ({ left, right, bottom, top }) =>
        left < 20 || right > page.width - 50 || bottom < 14 || top > page.height - 14,
    );
    expect(outside, `text outside the margins of page ${index + 1}`).toEqual([]);
    expect(overlaps(page), `texts over each other on page ${index + 1}`).toEqual([]);
    expect(page.text).toContain(`Page ${index + 1} of ${pages.length}`);
    expect(page.placed.length, `page ${index + 1} is not blank`).toBeGreaterThan(5);
    // Only the running head and the foot may be cut, at their ends; no text of the flow is.
    const cut = page.placed.filter(
      ({ text, top, bottom }) => text.endsWith("…") && bottom > 60 && top < page.height - 60,
    );
    expect(cut).toEqual([]);
  }
  expect(fonts.filter(({ name, isEmbedded }) => !isEmbedded || !/NotoSans/.test(name))).toEqual([]);
  expect(isTagged).toBe(true);
  expect(unread, "text that no part of the structure holds").toEqual([]);
}

/** A ledger figure as it has to stand on paper, worked out apart from the code that prints it. */
function figureText(line: LedgerLine, value: number): string {
  const digits = { minimumFractionDigits: line.decimals, maximumFractionDigits: line.decimals };
  const number = value.toLocaleString("en-US", digits).replace("-", "−");
  return `${number} ${line.unit}`.trim();
}

const parts = packetPartsOf();

describe.each([
  ["file packet", async () => renderView(filePacketView(parts)), () => true],
  [
    "homeowner packet",
    async () => renderView(homeownerPacketView(parts, "en", null)),
    // A homeowner's has the lines that were measured or logged; what is set stands with its reason.
    ({ cells }: LedgerLine) => cells.measured.value !== null || cells.lived.value !== null,
  ],
] as const)("%s: numbers", (name, make, isPrinted) => {
  test("every figure of the ledger stands there with its unit and its uncertainty", async () => {
    const { text } = await printed(name.replace(" ", "-"), await make());
    const numbers = parts.evaluation.ledger.filter(isPrinted).flatMap((line) =>
      COLUMNS.flatMap((column) => {
        const { value, uncertainty } = line.cells[column];
        return typeof value === "number" ? [{ line, value, uncertainty }] : [];
      }),
    );
    expect(numbers.length).toBeGreaterThan(30);
    for (const { line, value, uncertainty } of numbers) {
      expect(text, line.label).toContain(figureText(line, value));
      if (uncertainty !== null) {
        expect(text, line.label).toContain(`± ${figureText({ ...line, unit: "" }, uncertainty)}`);
      }
    }
  });
});

describe("the file packet", () => {
  let view: SheetView;
  let read: Read;
  beforeAll(async () => {
    view = filePacketView(parts);
    read = await printed("file", await renderView(view));
  });

  test("is sound on every page", () => expectSound(read));

  test("holds every record, who signed it, and every finding with its verdict, statement and basis", () => {
    for (const stage of STAGES) {
      expect(read.outline).toContain(STAGE_NAMES[stage]);
      for (const finding of parts.evaluation.findings[stage]) {
        expect(read.text).toContain(finding.title.replaceAll(/[≤≥]/g, "="));
        expect(read.text.replaceAll(/\s/g, "")).toContain(finding.statement.replaceAll(/\s/g, ""));
      }
    }
    expect(read.text.match(/signed 2026-07-21 by Inés Barragán-Todd/g)?.length).toBeGreaterThanOrEqual(6);
  });

  test("names instruments with accuracy and calibration, and where each thing is", () => {
    for (const tool of FULL_JOB.instruments) expect(read.text).toContain(tool.serialNumber);
    expect(read.text).toContain("from memory of the two standards and names no clauses");
    expect(read.text).toMatch(/Total duct leakage ACCA 5, 310 Not in this packet not measured here/);
    expect(read.text).toMatch(/Airflow through the indoor coil, and how measured .* signed|in part, signed/);
  });

  test("names itself, in its language, with an outline, tagged in reading order", () => {
    expect(read.info).toMatchObject({
      Title: "File packet: Łukasz O'Neil-Nguyễn",
      Author: "Levee Road Home Comfort",
      Language: "en-US",
      CreationDate: "D:20260731000000Z",
    });
    expect(read.outline.slice(0, 3)).toEqual(["File packet", "Where the job stands", "Load summary"]);
    expect(read.roles).toEqual(
      expect.arrayContaining(["Document", "H1", "H2", "H3", "Table", "TR", "TH", "TD"]),
    );
    const order = [...STAGES.map((stage) => STAGE_NAMES[stage]), "Settings as left", "Appendix"];
    const at = order.map((title) => read.headings.findIndex((heading) => heading.startsWith(title)));
    expect(at).toEqual([...at].sort((one, other) => one - other));
    expect(at[0]).toBeGreaterThanOrEqual(0);
  });

  test("is the same bytes when printed again", async () => {
    const again = await renderView(filePacketView(packetPartsOf()));
    const first = await renderView(view);
    expect(Buffer.from(again).equals(Buffer.from(first))).toBe(true);
  });
});

describe("the crew sheet", () => {
  test.each(["letter", "a4"] as const)(
    "is one page on %s with the maker's labels, aims and cautions",
    async (paper) => {
      const read = await printed(`crew-${paper}`, await renderView(crewPacketView(packetPartsOf({ paper }))));
      expectSound(read);
      expect(read.pages).toHaveLength(1);
      for (const expected of [
        "First-stage start offset Menu 11: cool start gap 1.0 °F",
        "Fan between calls Menu 42: idle fan off",
        // The maker asks for 9 °F; the company allows 3 °F either way.
        "Subcooling 6.0 to 12.0 °F, aim 9.0",
        "0.38 to 0.63 in. w.c., aim 0.50",
        "at most 500 microns",
        "Mildly flammable (A2L) refrigerant",
        "The fan is wired for two stages",
        "Write here if the phone dies",
      ]) {
        expect(read.text).toContain(expected);
      }
    },
  );
});

test("the humidity review shows the log, the comparison and when to look again", async () => {
  const read = await printed("review", await renderView(reviewPacketView(parts)));
  expectSound(read);
  for (const expected of ["the promise is kept", "330 h", "of 336 h logged", "Look again on 2026-08-28"]) {
    expect(read.text).toContain(expected);
  }
});

describe("in Spanish", () => {
  test("no English sentence of ours is left in the homeowner packet", async () => {
    // A company's own words stand as it wrote them.
    const brand = { ...PLAIN_BRAND, coverWords: "", closingWords: "" };
    const view = homeownerPacketView(packetPartsOf({ paper: "a4", brand }), "es", null);
    const read = await printed("homeowner-es", await renderView(view));
    expect(read.pages.flatMap(overlaps)).toEqual([]);
    for (const expected of [
      "Enfriamiento total",
      "Caudal de aire",
      "Agua extraída",
      "Fin de garantía, piezas",
      "2036-07-21",
    ]) {
      expect(read.text).toContain(expected);
    }
    expect(read.text).not.toMatch(
      /\b(the|cooling|airflow|humidity|compressor|startup|warranty|not measured)\b/i,
    );
  });
});

describe("bad input gives a good packet", () => {
  test.each(STAGES)("without a %s", async (stage) => {
    const empty = { ...FULL_JOB, inputs: { ...FULL_JOB.inputs, [stage]: blank(FULL_JOB.inputs[stage]) } };
    const without = packetPartsOf({}, [stage], empty);
    for (const view of [filePacketView(without), crewPacketView(without), reviewPacketView(without)]) {
      const read = await printed(`without-${stage}`, await renderView(view));
      expectSound(read);
      expect(read.text).not.toMatch(/undefined|null|NaN/);
    }
    const home = await printed("without", await renderView(homeownerPacketView(without, "en", null)));
    expectSound(home);
    expect(home.text).not.toMatch(/undefined|null|NaN/);
  });

  test("with 40 photographs: every one is there, two in a row, none over a text", async () => {
    const photos = await packetPhotosOf(40);
    const read = await printed("photos", await renderView(filePacketView(packetPartsOf({ photos }))));
    expectSound(read);
    expect(read.pictures).toBe(40);
    for (const photo of photos) expect(read.text).toContain(photo.caption);
  });

  test("with a note of twelve pages, control characters and letters from right to left", async () => {
    const line = "The readings were taken again after half an hour of steady running in the attic. ";
    const notes = `${line.repeat(600)}\u0000\u202Eevil\u202C محمد end`;
    const inputs = { ...FULL_JOB.inputs, startup_record: { ...FULL_JOB.inputs.startup_record, notes } };
    const read = await printed(
      "long-note",
      await renderView(filePacketView(packetPartsOf({}, [], { ...FULL_JOB, inputs }))),
    );
    expectSound(read);
    expect(read.text.match(/taken again after half an hour/g)?.length).toBeGreaterThan(590);
    expect(read.text).toContain("[Arabic]");
    expect(read.text).not.toMatch(/[\p{Cc}\p{Bidi_Control}]/u);
  });
});

/** A stage with nothing entered. */
function blank<T extends object>(inputs: T): T {
  return Object.fromEntries(Object.keys(inputs).map((key) => [key, null])) as T;
}
