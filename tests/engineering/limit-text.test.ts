import { describe, expect, test } from "vitest";
import { textBeside } from "@/lib/engineering/limit-text";

const SOURCE = "rounding, by hand (computed)";

describe(`a number beside the limit it misses: ${SOURCE}`, () => {
  test.each([
    ["1.152 would be 1.15 of at most 1.15", 1.152, [0.9, 1.15], 2, "1.152"],
    ["94.96 % would be 95 of at least 95", 94.96, [95], 0, "94.96"],
    ["60.3 % would be 60 of at most 60", 60.3, [60], 0, "60.3"],
    ["the limit itself needs none", 1.15, [0.9, 1.15], 2, "1.15"],
    ["nor what is clear of it", 1.062, [0.9, 1.15], 2, "1.06"],
    ["nor a sum of doubles that is the limit", 0.1 + 0.2, [0.3], 1, "0.3"],
    ["just inside stays inside", 0.8996, [0.9], 2, "0.8996"],
    ["a side without a limit is no limit", 59.7, [null, 60], 0, "59.7"],
    ["three more at most", 60.000_01, [60], 0, "60.000"],
  ] as const)("%s", (_name, value, limits, decimals, text) => {
    expect(textBeside(value, limits, decimals)).toBe(text);
  });
});
