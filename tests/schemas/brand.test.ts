import { describe, expect, test } from "vitest";
import { brandSchema } from "@/lib/schemas/brand";

const given = {
  displayName: " Example Comfort ",
  licenseLine: "",
  phone: "",
  email: "",
  website: "",
  addressLines: "1 Example Street\r\n\n Springfield \n",
  accentColor: "#1F4",
};
const problems = (change: Record<string, string>) => {
  const read = brandSchema.safeParse({ ...given, ...change });
  return read.success ? [] : read.error.issues.map((issue) => [issue.path[0], issue.message]);
};

describe("the brand form", () => {
  test("keeps trimmed text, lines that hold something, and the color in six digits", () => {
    expect(brandSchema.parse(given)).toEqual({
      ...given,
      displayName: "Example Comfort",
      addressLines: ["1 Example Street", "Springfield"],
      accentColor: "#11ff44",
      coverWords: "",
      closingWords: "",
      coverWordsEs: "",
      closingWordsEs: "",
      termsWords: "",
      termsWordsEs: "",
      paper: "letter",
      coverStyle: "ledger",
      partsWarrantyYears: null,
      laborWarrantyYears: null,
      maintenanceMonths: null,
    });
  });

  test("names are one line, words keep their paragraphs", () => {
    const paragraphs = "First.\n\nSecond.";
    const read = brandSchema.parse({
      ...given,
      displayName: "Example\r\nComfort",
      coverWords: paragraphs,
      termsWordsEs: paragraphs,
    });
    expect(read).toMatchObject({
      displayName: "Example Comfort",
      coverWords: paragraphs,
      termsWordsEs: paragraphs,
    });
  });

  test.each([
    ["displayName", " ", "needed"],
    ["displayName", "x".repeat(81), "80 characters"],
    ["email", "office", "office@example.com"],
    ["website", "example.com", "https://example.com"],
    ["website", "javascript://example.com/%0aalert(1)", "https://example.com"],
    ["addressLines", "1\n2\n3\n4\n5", "at most 4 lines"],
    ["accentColor", "navy", "#1f4f7a"],
    ["accentColor", "#1f4f7a;}", "#1f4f7a"],
    ["coverWords", "x".repeat(1_201), "1200 characters"],
    ["paper", "legal", "Letter or A4"],
    ["coverStyle", "neon", "choose one"],
    ["partsWarrantyYears", "0", "from 1 to 50"],
    ["laborWarrantyYears", "two", "whole years"],
    ["maintenanceMonths", "6.5", "whole months"],
  ])("names %s and the fix when it is %j", (field, value, fix) => {
    expect(problems({ [field]: value })).toEqual([[field, expect.stringContaining(fix)]]);
  });

  test("accepts a full address of a site and of a mailbox", () => {
    expect(problems({ email: "office@example.com", website: "https://example.com/about" })).toEqual([]);
  });
});
