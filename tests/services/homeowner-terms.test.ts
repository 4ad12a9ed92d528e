import { expect, test } from "vitest";
import { printedBrand } from "@/lib/services/brand";
import { homeownerPacketView } from "@/lib/services/homeowner-packet-view";
import { DEMO_COMPANIES } from "@/seed/companies";
import { FULL_JOB } from "../support/full-job";
import { packetPartsOf } from "../support/packet-parts";

const withSelection = (change: object) => ({
  ...FULL_JOB,
  inputs: { ...FULL_JOB.inputs, equipment_selection: { ...FULL_JOB.inputs.equipment_selection, ...change } },
});

test("terms of the company hold where the job names none, counted from the signed startup", () => {
  // Signed on 2026-07-21; 10 years of parts, 2 of labor, maintenance every 12 months.
  const { terms } = homeownerPacketView(packetPartsOf(), "en", null);
  expect(terms.dates).toEqual([
    { label: "Next maintenance", text: "2027-07-21" },
    { label: "Labor warranty ends", text: "2028-07-21" },
    { label: "Parts warranty ends", text: "2036-07-21" },
  ]);
});

test("a startup signed in Hawaii in the afternoon is of that day, though Greenwich is a day on", () => {
  const parts = packetPartsOf({ timeZone: "Pacific/Honolulu" });
  const startup = parts.records.startup_record;
  if (startup === null) throw new Error("The sample has a startup.");
  // 2026-07-22 01:30 UTC is 3:30 PM on the 21st at UTC-10.
  const records = { ...parts.records, startup_record: { ...startup, signedAt: "2026-07-22T01:30:00.000Z" } };
  const { terms, job } = homeownerPacketView({ ...parts, records }, "en", null);
  expect(job.dates[0]?.text).toBe("2026-07-21");
  expect(terms.dates[0]).toEqual({ label: "Next maintenance", text: "2027-07-21" });
});

test("terms of the job come before the company's; 0 promises nothing", () => {
  const own = { partsWarrantyYears: 5, laborWarrantyYears: 0, warrantyWords: "Compressor: 12 years." };
  const parts = packetPartsOf({}, [], withSelection(own));
  const { terms, job } = homeownerPacketView(parts, "en", null);
  expect(terms.dates).toEqual([
    { label: "Next maintenance", text: "2027-07-21" },
    { label: "Parts warranty ends", text: "2031-07-21" },
  ]);
  expect(terms.words).toEqual(["Compressor: 12 years."]);
  expect(job.dates).toEqual(expect.arrayContaining([...terms.dates]));
});

test("a company's own words stand in the packet's language, in English where it wrote none in Spanish", () => {
  const [first] = DEMO_COMPANIES;
  if (!first) throw new Error("The demo has no company.");
  const { brand } = first;
  expect(printedBrand(brand, null, "es").coverWords).toBe(brand.coverWordsEs);
  expect(printedBrand(brand, null, "en").closingWords).toBe(brand.closingWords);
  expect(printedBrand({ ...brand, termsWordsEs: "" }, null, "es").termsWords).toBe(brand.termsWords);
});
