import { execFileSync } from "node:child_process";
import { expect, test } from "vitest";

const SOURCE = "used heap as the engine reports it, before and after (measured)";

type Measured = { readonly way: string; readonly oneYear: number; readonly twoYears: number };

test(`the minute loop allocates nothing: ${SOURCE}`, () => {
  const flags = ["--expose-gc", "--min-semi-space-size=128", "--max-semi-space-size=128", "--import", "tsx"];
  const said = execFileSync(process.execPath, [...flags, "tests/support/year-allocation.ts"], {
    encoding: "utf8",
    env: { ...process.env, NODE_OPTIONS: "" },
  });
  const found = JSON.parse(said) as readonly Measured[];
  expect(found).toHaveLength(3);
  // A year has 525,600 minutes: one number a minute would be 8.4 MB, twice that in two years. What is left is of each call, not of each minute.
  for (const { way, oneYear, twoYears } of found) {
    expect([way, oneYear < 300_000, twoYears < 300_000], `${oneYear} and ${twoYears} bytes`).toEqual([
      way,
      true,
      true,
    ]);
  }
});
