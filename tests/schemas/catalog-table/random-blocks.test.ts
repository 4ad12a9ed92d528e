import fc from "fast-check";
import { expect, it } from "vitest";
import { performanceAt } from "@/lib/engineering/equipment";
import { checkTable, fanLines, readBlock, suggestMapping, TABLE_KINDS } from "@/lib/schemas/catalog-table";

const RUNS = Number(process.env.DEWLEDGER_RANDOM_RUNS ?? 200);
const GOOD = [
  "Stage\tOutdoor °F\tEWB °F\tEDB °F\tCFM\tTotal Btu/h\tSensible Btu/h\tPower W\tESP in. w.c.",
  ...[75, 85, 95].flatMap((outdoor) =>
    [63, 67].map(
      (wet) =>
        `full\t${outdoor}\t${wet}\t80\t1,200\t${36_000 - outdoor * 20 + wet}\t27,000\t2900\t0.${outdoor - wet}`,
    ),
  ),
].join("\n");

/** The good block with pieces cut out, doubled, moved or written over. */
const mutated = fc
  .array(
    fc.tuple(
      fc.nat(GOOD.length),
      fc.nat(12),
      fc.oneof(
        fc.string({ maxLength: 6 }),
        fc.constantFrom("\t", "\n", '"', ";", ",", "1e999", "°C", "−5", "NaN", "#REF!", "1.250,5"),
      ),
    ),
    { maxLength: 8 },
  )
  .map((changes) =>
    changes.reduce((text, [at, length, piece]) => text.slice(0, at) + piece + text.slice(at + length), GOOD),
  );
const shuffled = fc
  .shuffledSubarray(GOOD.split("\n").slice(1))
  .map((rows) => [GOOD.split("\n")[0], ...rows].join("\n"));

it("no block breaks the reader; every row is kept whole or has a named cell", () => {
  fc.assert(
    fc.property(
      fc.oneof(mutated, shuffled, fc.string({ maxLength: 200 })),
      fc.constantFrom(...TABLE_KINDS),
      (text, kind) => {
        const found = readBlock(text);
        if ("kind" in found) return found.reason.length > 20;
        const block = fanLines(found);
        const table = checkTable(kind, block, suggestMapping(kind, block));
        const named = new Set(table.refused.map(({ row }) => row));
        expect(table.goodRows + named.size).toBe(block.rows.length);
        for (const cell of table.refused) {
          expect(cell.reason.length * cell.fix.length * cell.column.length).toBeGreaterThan(0);
          expect(cell.line).toBeGreaterThan(0);
        }
        // What is kept is a table the engineering takes: it finds each of its own rows again.
        const points = table.performance.flatMap((row) =>
          row.enteringWbF === null || row.sensibleBtuh === null
            ? []
            : [{ ...row, enteringWbF: row.enteringWbF, sensibleBtuh: row.sensibleBtuh }],
        );
        const ofOne = points.filter((point) => point.capacitySetting === points[0]?.capacitySetting);
        for (const point of ofOne.slice(0, 2))
          expect(performanceAt(ofOne, point).totalBtuh).toBeCloseTo(point.totalBtuh, 6);
        return true;
      },
    ),
    { seed: 20261126, numRuns: RUNS },
  );
});

it("shuffled rows give the same rows", () => {
  fc.assert(
    fc.property(fc.shuffledSubarray(GOOD.split("\n").slice(1), { minLength: 6, maxLength: 6 }), (rows) => {
      const read = (text: string) => {
        const block = readBlock(text);
        if ("kind" in block) throw new Error(block.reason);
        return checkTable("performance", block, suggestMapping("performance", block))
          .performance.map((row) => JSON.stringify(row))
          .sort();
      };
      expect(read([GOOD.split("\n")[0], ...rows].join("\n"))).toEqual(read(GOOD));
      expect(read(GOOD)).toHaveLength(6);
    }),
    { seed: 20261126, numRuns: 20 },
  );
});
