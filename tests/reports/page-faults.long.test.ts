import { beforeAll, describe, expect, test, vi } from "vitest";
import type { JobContext } from "@/lib/domain/evaluate";
import { STAGES, type StageKey } from "@/lib/domain/stages";
import { cleanLogo } from "@/lib/files/clean-logo";
import { loadFonts } from "@/lib/reports/fonts";
import type { PacketBrand } from "@/lib/reports/homeowner/view";
import { drawPdf, layOut, renderPdf } from "@/lib/reports/render-pdf";
import { documentOf, type PrintedView } from "@/lib/reports/render-view";
import { printedBrand } from "@/lib/services/brand";
import { homeownerPacketView } from "@/lib/services/homeowner-packet-view";
import { crewPacketView } from "@/lib/services/packet-views/crew";
import { filePacketView } from "@/lib/services/packet-views/file";
import type { PacketParts } from "@/lib/services/packet-views/parts";
import { reviewPacketView } from "@/lib/services/packet-views/review";
import { DEMO_COMPANIES } from "@/seed/companies";
import { FULL_JOB } from "../support/full-job";
import { packetPartsOf, packetPhotosOf } from "../support/packet-parts";
import * as broken from "./broken-documents";
import { faultsOfPages, layoutFaults, pictureFaults } from "./page-faults";
import { orderFaults, overlaps, readPdf } from "./read-pdf";

vi.setConfig({ testTimeout: 240_000, hookTimeout: 120_000 });

/** Every packet of a job that can be made of these parts. */
function everyPacket(parts: PacketParts): readonly (readonly [string, PrintedView])[] {
  return [
    ["homeowner, English", homeownerPacketView(parts, "en", null)],
    ["homeowner, Spanish", homeownerPacketView(parts, "es", null)],
    ["crew", crewPacketView(parts)],
    ["file", filePacketView(parts)],
    ["review", reviewPacketView(parts)],
  ];
}

/** One page in `every` is looked at as a picture, the slowest look of all. */
async function faultsOf(view: PrintedView, every = 1): Promise<readonly string[]> {
  const document = await documentOf(view);
  const laidOut = await layOut(document);
  const layout = faultsOfPages(laidOut);
  const bytes = await drawPdf(document.props, laidOut);
  const { pages, order } = await readPdf(bytes);
  return [
    ...layout,
    ...(await pictureFaults(bytes, every)),
    ...pages.flatMap(overlaps),
    ...order.flatMap(orderFaults),
  ];
}

async function expectNoFaults(parts: PacketParts, every = 1): Promise<void> {
  for (const [name, view] of everyPacket(parts)) expect(await faultsOf(view, every), name).toEqual([]);
}

/** Both brands of the demo as paper shows them. */
let brands: readonly PacketBrand[];
beforeAll(async () => {
  brands = await Promise.all(
    DEMO_COMPANIES.map(async ({ brand, logoSvg }) =>
      printedBrand(brand, await cleanLogo(new TextEncoder().encode(logoSvg))),
    ),
  );
});

describe.each(["letter", "a4"] as const)("on %s", (paper) => {
  test.each([0, 1])("no text is cut, outside its box or over another in brand %i", (brand) =>
    expectNoFaults(packetPartsOf({ paper, brand: brands[brand] as PacketBrand })),
  );
});

test.each(STAGES)("nor without a %s", (stage: StageKey) =>
  expectNoFaults(packetPartsOf({}, [stage], withInputs(stage, {}, true)), 3),
);

test("nor with 40 photographs", async () => {
  const photos = await packetPhotosOf(40);
  expect(await faultsOf(filePacketView(packetPartsOf({ photos })))).toEqual([]);
});

test("nor with a note of twelve pages and words without end", async () => {
  const line = "The readings were taken again after half an hour of steady running in the attic. ";
  const notes = `${line.repeat(600)}${"x".repeat(300)}`;
  const parts = packetPartsOf({}, [], withInputs("startup_record", { notes }));
  expect(await faultsOf(filePacketView(parts))).toEqual([]);
});

test("nor with names as long as the forms take them", async () => {
  const name = "Wolfeschlegelsteinhausenbergerdorff-Featherstonehaugh ".repeat(2).trim();
  const parts = packetPartsOf();
  const { job } = parts;
  await expectNoFaults({
    ...parts,
    brand: {
      ...parts.brand,
      companyName: "Featherstonehaugh & Wolfeschlegelstein Home Comfort of Bay County, Inc.",
    },
    job: {
      ...job,
      customer: { ...job.customer, name },
      home: {
        ...job.home,
        addressLine: "10000 Llanfairpwllgwyngyllgogerychwyrndrobwllllantysilio Boulevard, rear",
      },
    },
  });
});

describe("the checks themselves find", () => {
  beforeAll(loadFonts);

  test("a text in a box too small for it", async () => {
    expect((await layoutFaults(broken.tooSmall)).join("; ")).toMatch(/is lost from its letter \d+ on/);
  });

  test("a box too small for what is in it", async () => {
    expect((await layoutFaults(broken.outOfBox)).join("; ")).toMatch(/reaches out of its box/);
  });

  test("a word wider than its column", async () => {
    expect((await layoutFaults(broken.tooWide)).join("; ")).toMatch(/wider than its box/);
  });

  test("two boxes over each other", async () => {
    expect((await layoutFaults(broken.overlapping)).join("; ")).toMatch(/lies over its neighbour/);
  });

  test("a drawing that is cut at its edge, and one that is not", async () => {
    expect(await pictureFaults(await renderPdf(broken.drawnAt(85)))).toEqual([
      expect.stringMatching(/page 1: something is cut near \d+, \d+ pt/),
    ]);
    expect(await pictureFaults(await renderPdf(broken.drawnAt(35)))).toEqual([]);
  });

  test("a table’s head that is left behind", async () => {
    expect((await layoutFaults(broken.headAlone)).join("; ")).toMatch(/a table’s head without a row/);
  });

  test("a heading without what it heads, and a page left to a line", async () => {
    expect((await layoutFaults(broken.headingAlone)).join("; ")).toMatch(/heading “Heading” without/);
    expect((await layoutFaults(broken.almostEmpty)).join("; ")).toMatch(/page 1: almost empty/);
  });

  test("a text that is read after one that stands below it", async () => {
    const { order } = await readPdf(await renderPdf(broken.readUpwards));
    expect(order.flatMap(orderFaults)).toEqual([
      "“Second, above” is read after “First, below”, which stands below it",
    ]);
  });

  test("ink in a margin", async () => {
    expect(await pictureFaults(await renderPdf(broken.inTheMargin))).toContain(
      "page 1: ink in the right margin",
    );
  });
});

function withInputs(stage: StageKey, change: object, isEmpty = false): JobContext {
  const own = FULL_JOB.inputs[stage];
  const base = isEmpty ? Object.fromEntries(Object.keys(own).map((key) => [key, null])) : own;
  return { ...FULL_JOB, inputs: { ...FULL_JOB.inputs, [stage]: { ...base, ...change } } };
}
