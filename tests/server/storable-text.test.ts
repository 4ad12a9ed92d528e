import { expect, test } from "vitest";
import { refuseUnstorableText } from "@/lib/server/storable-text";

test.each([
  ["a NUL character", { inputs: { notes: "a\0b" } }, "notes"],
  ["half of a surrogate pair", { title: "house \ud83c" }, "title"],
  ["the other half", { title: "\udfe0 house" }, "title"],
  ["an entry of a list", { techIds: ["fine", "\0"] }, "techIds"],
  ["the name of a field", { fields: { "a\0b": { base: null, value: 7 } } }, "fields"],
  ["a list nested a hundred thousand times", JSON.parse(`{"a":${"[".repeat(1e5)}${"]".repeat(1e5)}}`), "a"],
])("%s is refused by the name of its field", (_, input, field) => {
  expect(() => refuseUnstorableText(input)).toThrow(
    expect.objectContaining({ code: "INVALID_INPUT", fields: [expect.objectContaining({ field })] }),
  );
});

test("every other text is let through: line breaks, emoji, right-to-left, nothing", () => {
  const input = {
    a: "one\r\ntwo\t",
    b: "🏠 Łukasz",
    c: "שלום",
    d: "",
    e: null,
    f: undefined,
    g: 4,
    h: [true],
  };
  expect(() => refuseUnstorableText(input)).not.toThrow();
  expect(() => refuseUnstorableText(null)).not.toThrow();
});
