import { readFileSync } from "node:fs";
import path from "node:path";
import fc from "fast-check";
import { zipSync } from "fflate";
import { expect, it } from "vitest";
import { filesIn, previewLog, readLogFile } from "@/lib/schemas/log-file";

/** Appliances Energy Prediction data set, UCI, CC BY 4.0; see its README. */
const WHOLE = readFileSync(
  path.resolve(import.meta.dirname, "../../fixtures/house-log/measured-house-2016-a.csv"),
);
/** Its first rows: enough for dates, units and an interval, few enough for ten thousand files. */
const START = WHOLE.subarray(0, WHOLE.indexOf(10, 6_000) + 1);
const ARCHIVE = zipSync({ "a.csv": START });
const RUNS = Number(process.env.DEWLEDGER_RANDOM_RUNS ?? 1_000);

const change = fc.record({
  at: fc.nat(),
  kind: fc.constantFrom("flip", "cut", "double", "insert", "end"),
  bytes: fc.uint8Array({ minLength: 1, maxLength: 12 }),
});

function mutated(
  file: Uint8Array,
  changes: readonly { at: number; kind: string; bytes: Uint8Array }[],
): Uint8Array {
  return changes.reduce<Uint8Array>((now, { at, kind, bytes }) => {
    const from = now.length === 0 ? 0 : at % now.length;
    const [head, tail] = [now.subarray(0, from), now.subarray(from)];
    const rest = tail.subarray(bytes.length);
    if (kind === "flip") return Buffer.concat([head, bytes, rest]);
    if (kind === "cut") return Buffer.concat([head, rest]);
    if (kind === "double") return Buffer.concat([head, tail.subarray(0, 200), tail]);
    if (kind === "insert") return Buffer.concat([head, bytes, tail]);
    return head;
  }, file);
}

const answers = (bytes: Uint8Array): void => {
  expect(["preview", "refused"]).toContain(previewLog(bytes).kind);
  const files = filesIn(bytes);
  if ("kind" in files) {
    expect(files.reason.length).toBeGreaterThan(10);
    return;
  }
  for (const one of files) {
    const read = readLogFile(one.bytes, { zone: "Europe/Brussels", mapping: null });
    if (read.kind === "refused") expect(read.reason.length).toBeGreaterThan(10);
    else expect(read.samples.timeMs.length).toBeGreaterThan(0);
  }
};

it("the file as it is can be read", () => {
  expect(previewLog(START)).toMatchObject({ kind: "preview", delimiter: "," });
  expect(readLogFile(START, { zone: "Europe/Brussels", mapping: null }).kind).toBe("read");
});

it.each([
  ["a measured log", START],
  ["an archive of it", ARCHIVE],
])(
  "%s, damaged in any way, is read or refused with a reason, never thrown at",
  (_, file) => {
    fc.assert(
      fc.property(fc.array(change, { minLength: 1, maxLength: 6 }), (changes) => {
        answers(mutated(file, changes));
      }),
      { seed: 83, numRuns: RUNS },
    );
  },
  300_000,
);

it("a workbook, an archive without tables and one that unpacks too large are refused by what they are", () => {
  const code = (bytes: Uint8Array) => {
    const files = filesIn(bytes);
    return "kind" in files ? files.code : "taken";
  };
  expect(code(zipSync({ "[Content_Types].xml": START, "xl/sheet.csv": START }))).toBe("spreadsheet");
  expect(code(zipSync({ "notes.md": START }))).toBe("archive");
  // 160 MB of one letter packs into 160 kB.
  expect(code(zipSync({ "bomb.csv": new Uint8Array(160_000_000).fill(65) }))).toBe("too large");
});
