import { expect, test } from "vitest";
import { type PrintedView, renderView } from "@/lib/reports/render-view";
import { homeownerPacketView } from "@/lib/services/homeowner-packet-view";
import { filePacketView } from "@/lib/services/packet-views/file";
import { reviewPacketView } from "@/lib/services/packet-views/review";
import { FULL_JOB } from "../support/full-job";
import { KEPT_FORECAST, LIVED } from "../support/kept-forecast";
import { packetPartsOf } from "../support/packet-parts";
import { readPdf } from "./read-pdf";

const kept = { ...KEPT_FORECAST, stale: false };
const partsWith = (change: Partial<typeof FULL_JOB>) =>
  packetPartsOf({ forecast: change.forecast ? KEPT_FORECAST : null }, [], { ...FULL_JOB, ...change });
const read = async (view: PrintedView) => {
  const pdf = await readPdf(await renderView(view));
  return { ...pdf, text: pdf.text.replaceAll("\u00a0", " ") };
};

test("the homeowner reads what a typical year is forecast to be, in ranges, with its months", async () => {
  const { text, outline, pages } = await read(homeownerPacketView(partsWith({ forecast: kept }), "en", null));
  const sentence =
    "In a typical year (Invented Bay) this design is forecast to keep the house at or below 55 % for about 8,512 of 8,760 hours, and from 8,350 to 8,674 for what is not known of the house and the year.";
  // On the cover, and with its picture.
  expect(pages[0]?.text.replaceAll("\u00a0", " ")).toContain(sentence);
  expect(pages[1]?.text.replaceAll("\u00a0", " ")).toContain(sentence);
  expect(outline).toContain("What a typical year should be like");
  // 95 % of 8,760 h.
  expect(text).toContain("8,512 h at least 8,322 of 8,760 h");
  expect(text).toContain("Hours above the limit From 86 to 410 h for what is not known. 248 h");
  expect(text).toContain("248 hours above 55 % in the year; most in Oct, 58 (22 to 94).");
  expect(text).toContain("It is a forecast, not a guarantee");
  expect(text).toMatch(/Dry-hours of a typical year, forecast 8,512 h 8,350 to 8,674 of 8,760 h/);
});

test("the same in Spanish", async () => {
  const { text } = await read(homeownerPacketView(partsWith({ forecast: kept }), "es", null));
  expect(text).toContain(
    "En un año típico (Invented Bay) se prevé que este diseño mantenga la casa a 55 % o menos durante unas 8,512 de 8,760 horas, y de 8,350 a 8,674 por lo que no se sabe de la casa y del año.",
  );
  expect(text).toContain("248 horas por encima de 55 % en el año; el mes con más es oct, 58 (de 22 a 94).");
  expect(text).toContain("Horas por encima de 55 % columna: la casa como se supone; línea: de menos a más");
  expect(text).toContain("8,512 h de 8,350 a 8,674 de 8,760 h");
  expect(text).not.toMatch(/\b(hours|forecast|least|most)\b/);
});

test("a forecast of another design promises nothing", async () => {
  const stale = partsWith({ forecast: { ...kept, stale: true } });
  const { text } = await read(homeownerPacketView(stale, "en", null));
  expect(text).toContain("The design has changed since its forecast of 2026-07-01");
  expect(text).not.toContain("In a typical year (Invented Bay)");
  expect(text).toContain("8,512 h 8,350 to 8,674 of 8,760 h; design changed since");
  expect((await read(filePacketView(stale))).text).toContain(
    "The design, its weather or the model has changed since this forecast was kept.",
  );
});

test("without a forecast nothing is said of one to the homeowner, and the others say that none is kept", async () => {
  const none = partsWith({ forecast: null, lived: null });
  expect((await read(homeownerPacketView(none, "en", null))).text).not.toMatch(/forecast|typical year/i);
  for (const view of [filePacketView(none), reviewPacketView(none)])
    expect((await read(view)).text).toContain("No forecast is kept with this job.");
});

test("the file names the forecast, how it was made, its ranges and every assumption with its reason", async () => {
  const { text } = await read(filePacketView(partsWith({ forecast: kept })));
  for (const expected of [
    "Design 2 tons, less airflow",
    "Kept 2026-07-01 by Dewey Okonjo-Hale",
    "version 1, 10 of 10 houses and years, seed 1",
    "0f0f0f",
    "Hours at or below 55 % 8,512 h 8,350 h 8,674 h",
    "Mean run 26 min 22 min 29 min",
    "Leakage, air changes at 50 Pa 7.0 an hour 3.0 to 12.0 not measured; common practice, no source",
    "People 4 people – load summary",
    "Time constant of a start 45 s – Henderson & Rengarajan 1996",
  ])
    expect(text).toContain(expected);
});

test("the review sets forecast and lived side by side, by month, and says what would explain a difference", async () => {
  const { text, outline } = await read(reviewPacketView(partsWith({ forecast: kept, lived: LIVED })));
  expect(outline).toContain("Forecast against lived");
  for (const expected of [
    "1,440 h compared, hour against hour, in the log’s own weather.",
    "Above 55 % 97 h forecast 44 h (14 to 68)",
    "2026-09 (696 h) 66 h 32 h (10 to 47) 62 h (56 to 68)",
    "Mean humidity 52.4 % 51.2 % (49.8 to 52.9) 52.2 % (51.8 to 52.6)",
    "Of the assumptions “Leakage, air changes at 50 Pa” carries it most",
  ])
    expect(text).toContain(expected);
  const notYet = await read(reviewPacketView(partsWith({ forecast: kept, lived: null })));
  expect(notYet.text).toContain("It has not been held against a log of the house yet.");
  const old = await read(reviewPacketView(partsWith({ lived: { ...LIVED, outdated: true } })));
  expect(old.text).toContain("Records or weather have changed since");
});
