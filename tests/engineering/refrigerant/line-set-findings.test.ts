import { describe, expect, test } from "vitest";
import { lineSetFindings } from "@/lib/engineering/refrigerant";

const SOURCE =
  "maker's instructions, (length − included) × oz/ft: 50 ft, 15 included, 0.6 → +21 oz (computed)";
const MAKER = { includedLengthFt: 15, ouncesPerFt: 0.6 };

describe(`charge for the line set, ${SOURCE}`, () => {
  test("says what is asked for, what went in and how far apart they are", () => {
    const [said] = lineSetFindings({ ...MAKER, lineLengthFt: 50, addedOz: 18 });
    expect(said?.verdict).toBeNull();
    expect(said?.statement).toContain("asks for +21.0 oz; +18.0 oz went in, 3.0 oz less");
    expect(said?.caution).toMatch(/608/);
    expect(said?.nextStep).not.toBeNull();
  });

  test("a short line set asks to take charge out", () => {
    // (10 − 15) × 0.6 = −3
    expect(lineSetFindings({ ...MAKER, lineLengthFt: 10, addedOz: -3 })[0]?.statement).toContain(
      "asks for −3.0 oz; −3.0 oz went in, as asked",
    );
  });

  test("what is not given is named, never taken for zero", () => {
    expect(lineSetFindings({ ...MAKER, lineLengthFt: 50, addedOz: null })[0]).toMatchObject({
      verdict: "not measured",
      inputs: ["addedOz"],
    });
  });
});
