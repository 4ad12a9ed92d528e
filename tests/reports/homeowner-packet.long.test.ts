import { mkdir, writeFile } from "node:fs/promises";
import { beforeAll, describe, expect, test, vi } from "vitest";
import type { HomeownerPacketView } from "@/lib/reports/homeowner/view";
import { renderView } from "@/lib/reports/render-view";
import { overlaps, readPdf } from "./read-pdf";
import { fullPacket, sparsePacket, sunfield } from "./sample-packets";

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 });

type Read = Awaited<ReturnType<typeof readPdf>>;

/** Prints, keeps the file below `.tmp/packets` for looking at, and reads it back. */
async function printed(name: string, view: HomeownerPacketView): Promise<Read> {
  const bytes = await renderView(view);
  await mkdir(".tmp/packets", { recursive: true });
  await writeFile(`.tmp/packets/${name}.pdf`, bytes);
  return readPdf(bytes);
}

/** Holds for every packet, whatever is in it. */
function expectSound({ pages, fonts }: Read): void {
  for (const [index, page] of pages.entries()) {
    const outside = page.placed.filter(
      ({ left, right, bottom, top }) =>
        left < 20 || right > page.width - 50 || bottom < 20 || top > page.height - 20,
    );
    expect(outside, `text outside the margins of page ${index + 1}`).toEqual([]);
    expect(overlaps(page), `texts over each other on page ${index + 1}`).toEqual([]);
    expect(page.text).toContain(`Page ${index + 1} of ${pages.length}`);
    // Foot and running head are four texts.
    expect(page.placed.length, `page ${index + 1} is not blank`).toBeGreaterThan(5);
  }
  expect(fonts.length).toBeGreaterThan(0);
  expect(fonts.filter(({ name, isEmbedded }) => !isEmbedded || !/NotoSans/.test(name))).toEqual([]);
}

describe("a full packet", () => {
  let view: HomeownerPacketView;
  let read: Read;
  beforeAll(async () => {
    view = await fullPacket();
    read = await printed("full", view);
  });

  test("is sound on every page and has the paper's size", () => {
    expectSound(read);
    // Letter: 8.5 × 11 in. at 72 points an inch.
    expect(read.pages.every(({ width, height }) => width === 612 && height === 792)).toBe(true);
  });

  test("prints what was measured, with units and uncertainty", () => {
    for (const expected of [
      "Airflow How much air the blower moves through the house each minute. 742 cfm ± 37 700 to 800 cfm Meets",
      "1,012 cfm ± 51",
      "29,600 Btu/h ± 2,400",
      "15,100 Btu/h",
      "6,200 Btu/h",
      "7.8 lb/h ± 1.6 at least 6.9 lb/h Can’t tell",
      "22.4 gal/day",
      "0.71 in. w.c. ± 0.02 at most 0.50 in. w.c. Falls short",
      "11.2 °F ± 1.8",
      "9.6 °F ± 1.8",
      "Supply air leakage not measured Not measured",
    ]) {
      expect(read.text).toContain(expected);
    }
  });

  test("prints every figure, cell, setting and sentence of the view", () => {
    const figures = [...view.measured.flatMap((group) => group.figures), ...(view.lived?.figures ?? [])];
    const cells = view.ledger
      .flatMap((group) => group.lines)
      .flatMap((line) => [line.designed, line.set, line.measured, line.lived]);
    for (const shown of [...figures, ...cells, view.promise.setpoint, view.promise.humidityLimit]) {
      if (shown === null || shown.value === null) continue;
      expect(read.text).toContain(`${shown.value} ${shown.unit}`);
      if (shown.uncertainty !== undefined) expect(read.text).toContain(`± ${shown.uncertainty}`);
    }
    for (const sentence of [
      ...view.howToRun,
      ...view.whenToCall,
      ...view.cautions,
      ...view.inShort.map((line) => line.sentence),
      ...view.howItIsSet.flatMap(({ name, setTo, why }) => [name, setTo ?? "not recorded", why]),
      ...view.installed.equipment.map((row) => row.text),
      ...view.job.dates.map((row) => row.text),
      view.installed.capacitySetting.text,
      view.brand.coverWords,
      view.brand.closingWords,
      view.brand.licenceLine,
      view.lived?.words ?? "",
    ]) {
      expect(read.text).toContain(sentence);
    }
  });

  test("marks demo data, and explains every verdict in words", () => {
    expect(read.text).toContain("Demo data: invented equipment");
    expect(read.pages[0]?.text).toMatch(
      /Meets within the aim.*Falls short outside.*Can’t tell.*Not measured/,
    );
  });

  test("names itself: title, author, language, date, outline", () => {
    expect(read.info).toMatchObject({
      Title: "Homeowner packet: Łukasz O'Neil-Nguyễn and María Peña Ibáñez, Job 1042",
      Author: "Levee Road Home Comfort",
      Language: "en-US",
      CreationDate: "D:20260731000000Z",
    });
    expect(read.outline).toEqual([
      "Homeowner packet",
      "What was installed",
      "How it is set, and why",
      "What was measured",
      "The ledger",
      "How the house has lived",
      "How to run it",
      "Warranty and maintenance",
      "When to call",
    ]);
    expect(read.text).toContain("P-1042-7F3A · Revision 2, replaces revision 1 of 2026-06-02");
  });

  test("is the same bytes when printed again, also after another packet, and other bytes for other input", async () => {
    const first = await renderView(view);
    await renderView(sparsePacket());
    const again = await renderView(await fullPacket());
    expect(Buffer.from(again).equals(Buffer.from(first))).toBe(true);
    const other = await renderView({ ...view, revisionNote: "Revision 3" });
    expect(Buffer.from(other).equals(Buffer.from(first))).toBe(false);
  });

  test("suits another brand on A4, and stands in Spanish", async () => {
    const other = await printed("full-other-brand", { ...view, brand: sunfield, paper: "a4" });
    expectSound(other);
    // A4: 210 × 297 mm at 72 points an inch.
    expect(other.pages[0]?.width).toBeCloseTo((210 / 25.4) * 72, 1);
    expect(other.pages[0]?.height).toBeCloseTo((297 / 25.4) * 72, 1);
    const spanish = await printed("full-spanish", { ...view, language: "es" });
    expect(spanish.info).toMatchObject({ Language: "es-US" });
    for (const expected of ["Lo que se midió", "Cómo está ajustado y por qué", "Página 1 de", "No alcanza"]) {
      expect(spanish.text).toContain(expected);
    }
    expect(spanish.pages.flatMap(overlaps)).toEqual([]);
  });
});

test("a sparse packet says what is missing", async () => {
  const read = await printed("sparse", sparsePacket());
  expectSound(read);
  expect(read.text).toContain("not given Dry: humidity at most");
  expect(read.text).toContain("What was measured not measured");
  expect(read.text).toContain("Not measured yet. After some weeks of use");
  expect(read.text).not.toMatch(/undefined|null|NaN/);
});

const letters = (from: number, to: number) =>
  Array.from({ length: to - from + 1 }, (_, n) => String.fromCodePoint(from + n));

test("names from the whole Latin range come back letter by letter", async () => {
  const range = [
    ...letters(0xc0, 0x17f),
    ...letters(0x218, 0x21b),
    ...letters(0x1e80, 0x1e85),
    ...letters(0x1ea0, 0x1ef9),
  ].filter((letter) => letter.normalize("NFC") === letter);
  const words = Array.from({ length: Math.ceil(range.length / 12) }, (_, n) =>
    range.slice(n * 12, n * 12 + 12).join(""),
  );
  const names = [
    "Łukasz O'Neil-Nguyễn",
    "Şükrü Gökçeoğlu",
    "Đặng Thị Ưu",
    "Žofie Čeňková",
    "Íñigo Agüero",
    "Kāne Hawaiʻi",
  ];
  const read = await printed("names", { ...sparsePacket(), whenToCall: names, howToRun: [words.join(" ")] });
  expectSound(read);
  for (const name of [...names, ...words]) expect(read.text).toContain(name);
});

test("control characters, direction marks and letters without a shape cannot disturb the page", async () => {
  const base = sparsePacket();
  const read = await printed("hostile", {
    ...base,
    brand: { ...base.brand, coverWords: "First paragraph.\r\n\r\nSecond\u2029third.\n" },
    job: {
      ...base.job,
      customerName: "Ann\u0000e \u202Egnp.exe\u202C D\u00E9j\u00E0\u0007",
      addressLines: [
        "محمد الأحمد, 12 Main",
        "שלום (east)",
        "東京 tower 🏠",
        "नमस्ते office floor",
        "line\u2028two",
        "\uD800broken",
        "e\u0301t\u00e9",
      ],
      dates: [{ label: "One\r\ntwo", text: "\n\n" }],
      systemLine: "tab\there ≤ 55 %",
    },
  });
  expectSound(read);
  for (const expected of [
    "Anne gnp.exe Déjà",
    "[Arabic], 12 Main",
    "[Hebrew] (east)",
    "[Han] tower [symbol]",
    "[Devanagari] office floor",
    "line two",
    "One two",
    "broken",
    "été",
    "tab here <= 55 %",
  ]) {
    expect(read.text).toContain(expected);
  }
  expect(read.text).not.toMatch(/[\p{Cc}\p{Bidi_Control}\uFFFD]/u);
  expect(String(read.info.Title)).toContain("Anne gnp.exe Déjà");
});

test("lines break between words only", async () => {
  const words = ["first", "floor", "office", "a", "the", "fluff", "and", "ı", "Thị", "it", "efficient", "I"];
  // Short enough that its row is never broken over a page, where foot and head would stand inside the text.
  const text = Array.from({ length: 200 }, (_, n) => words[(n * n + (n >> 2)) % words.length]).join(" ");
  const read = await printed("words", { ...sparsePacket(), howToRun: [text, text], cautions: [text] });
  expectSound(read);
  expect(read.text.split(text)).toHaveLength(4);
});

test("long texts, long words and long tables run on: rows stay whole and heads are repeated", async () => {
  const full = await fullPacket();
  const sentence = "The system was left running and the readings were taken again after half an hour. ";
  const lines = Array.from({ length: 150 }, (_, n) => ({
    label: `Line ${n} of a long ledger whose name takes two rows`,
    designed: { value: `${n},001`, unit: "cfm" },
    set: { value: "extraordinarilylongsettingname", unit: "" },
    measured: { value: `${n},003`, unit: "cfm", uncertainty: "7" },
    lived: null,
    verdict: "meets" as const,
  }));
  const read = await printed("long", {
    ...full,
    job: { ...full.job, customerName: "Wolfeschlegelsteinhausenbergerdorff-Featherstonehaugh ".repeat(2) },
    brand: { ...full.brand, closingWords: sentence.repeat(500), companyName: "Company ".repeat(30) },
    ledger: [{ heading: "Many", lines }],
    howToRun: [sentence.repeat(60), "x".repeat(400), `https://example.com/${"path/".repeat(40)}`],
    whenToCall: [],
  });
  expectSound(read);
  for (const n of [0, 1, 42, 99, 149]) {
    const page = read.pages.find(({ text }) => text.includes(`Line ${n} of`));
    expect(page?.text).toContain(`${n},001 cfm`);
    expect(page?.text).toContain(`${n},003 cfm`);
    expect(page?.text).toContain("Line Designed Set Measured Lived Verdict");
  }
  const said = read.text.replaceAll("-", "").match(/taken again after half an hour/g) ?? [];
  expect(said.length).toBeGreaterThan(500);
});
