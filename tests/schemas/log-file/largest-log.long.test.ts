import { execFileSync } from "node:child_process";
import { expect, test } from "vitest";

/** Measured in a process of its own: memory a test runner holds is not the product's. */
function measured(rows: number): { readonly said: string; readonly fileMb: number; readonly mostMb: number } {
  const out = execFileSync("node", ["--import", "tsx", "tests/support/largest-log.ts", String(rows)], {
    maxBuffer: 1 << 20,
  });
  return JSON.parse(out.toString());
}

const MOST_MB = 512;

test("the largest log that is taken is read and analysed within 512 MB", { timeout: 120_000 }, () => {
  const { said, mostMb } = measured(1_000_000);
  expect(said).toMatch(/^1000000 rows, 69[45] days$/);
  expect(mostMb).toBeLessThan(MOST_MB);
});

test("five million rows are refused with the reason, also within 512 MB", { timeout: 120_000 }, () => {
  const { said, fileMb, mostMb } = measured(5_000_000);
  expect(fileMb).toBeGreaterThan(200);
  expect(said).toBe("The file is larger than 50 MB. Send it in parts, for instance by year.");
  expect(mostMb).toBeLessThan(MOST_MB);
});
