import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import path from "node:path";

/*
 * First 200 techs at once (many-techs.ts), a spoiled connection (field-faults.ts), and 20 kills of the application and of
 * PostgreSQL during saves (kill-nine-app.ts), then
 * `DEWLEDGER_RANDOM_RUNS=1000000 npm run soak`: the random-inputs tests of every engineering folder, at least that many inputs a public
 * function, then a table of what each function met and how long it took. A million takes hours.
 */
const runs = process.env.DEWLEDGER_RANDOM_RUNS ?? "1000000";
if (!(Number.isInteger(Number(runs)) && Number(runs) >= 1_000)) {
  throw new Error(`DEWLEDGER_RANDOM_RUNS is ${runs}. Give a whole number of at least 1000.`);
}

const root = path.resolve(import.meta.dirname, "../..");
const vitest = path.join(
  path.dirname(createRequire(import.meta.url).resolve("vitest/package.json")),
  "vitest.mjs",
);
// Minutes, before the hours.
const shorter = ["many-techs.ts", "field-faults.ts"].map((name) =>
  spawnSync(process.execPath, ["--import", "tsx", path.join(import.meta.dirname, name)], {
    cwd: root,
    stdio: "inherit",
  }),
);
const killed = spawnSync(
  process.execPath,
  ["--import", "tsx", path.join(import.meta.dirname, "kill-nine-app.ts")],
  {
    cwd: root,
    stdio: "inherit",
  },
);
const folder = mkdtempSync(path.join(tmpdir(), "dewledger-soak-"));
const done = spawnSync(process.execPath, [vitest, "run", "--project", "unit", "random-inputs.test.ts"], {
  cwd: root,
  stdio: "inherit",
  env: { ...process.env, DEWLEDGER_RANDOM_RUNS: runs, DEWLEDGER_RANDOM_REPORT: folder },
});

type Row = {
  readonly title: string;
  readonly calls: number;
  readonly refused: number;
  readonly totalMs: number;
  readonly slowestMs: number;
};
process.stdout.write(
  `\n${"function".padEnd(52)}${"calls".padStart(11)}${"refused".padStart(11)}${"µs each".padStart(11)}${"slowest ms".padStart(12)}\n`,
);
for (const file of readdirSync(folder).sort()) {
  const rows = JSON.parse(readFileSync(path.join(folder, file), "utf8")) as readonly Row[];
  for (const { title, calls, refused, totalMs, slowestMs } of rows) {
    const name = `${file.replace(".json", "")}/${title}`.padEnd(52);
    const each = ((1_000 * totalMs) / calls).toFixed(2);
    process.stdout.write(
      `${name}${String(calls).padStart(11)}${String(refused).padStart(11)}${each.padStart(11)}${slowestMs.toFixed(1).padStart(12)}\n`,
    );
  }
}
rmSync(folder, { recursive: true });
process.exit([...shorter, killed, done].every((one) => one.status === 0) ? 0 : 1);
