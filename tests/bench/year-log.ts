import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { DuckDBInstance } from "@duckdb/node-api";
import { analyzeLog, type LogContext } from "@/lib/engineering/logs";
import { readLogFile } from "@/lib/schemas/log-file";

const ROWS = 105_120;
const TURNS = 9;
/** A server has read logs before; so has the database in this process. */
const WARM_UP = 6;
const START_MS = Date.UTC(2025, 0, 1);
const CONTEXT: LogContext = {
  humidityLimitPct: 55,
  elevationFt: 50,
  deliveredSensibleBtuhByStage: [19_000, 27_000],
  design: { outdoorF: 95, sensibleBtuh: 26_000 },
};

/** A year of 5-minute rows as a thermostat's portal gives them; invented, and the same each time. */
export function yearLog(rows = ROWS, stepMin = 5): string {
  const lines = [
    "Local time,Indoor temperature F,Indoor RH %,Outdoor temperature F,Outdoor RH %,Setpoint F,Cool stage 1 (sec),Cool stage 2 (sec),Fan (sec)",
  ];
  const whole = stepMin * 60;
  for (let row = 0; row < rows; row++) {
    const at = new Date(START_MS + row * stepMin * 60_000).toISOString();
    const [day, hour] = [(row * stepMin) / 1_440, ((row * stepMin) / 60) % 24];
    const outdoor = 70 - 18 * Math.cos((day / 365) * 2 * Math.PI) + 9 * Math.sin(((hour - 9) / 12) * Math.PI);
    const load = Math.max(0, Math.min(1, (outdoor - 70) / 25));
    const on = ((row * 7_919) % 1_000) / 1_000 < load ? 1 : 0;
    const second = on === 1 && outdoor > 88 ? 1 : 0;
    const indoor = 75 + 0.8 * Math.sin(row / 9) + ((row * 31) % 7) / 20;
    const rh = 51 + 6 * Math.sin(day / 9) + 3 * Math.sin(row / 40) + ((row * 17) % 11) / 20;
    lines.push(
      `${at.slice(0, 10)} ${at.slice(11, 16)},${indoor.toFixed(1)},${rh.toFixed(1)},${outdoor.toFixed(1)},${(60 + 20 * Math.sin(row / 144)).toFixed(1)},75,${on * whole},${second * whole},${on * whole}`,
    );
  }
  return `${lines.join("\n")}\n`;
}

/** Magnus over water in °C, as plain SQL: what DuckDB is asked to do for every row. */
const DEW_POINT = (t: string, rh: string) =>
  `(243.12 * (ln(${rh} / 100) + 17.62 * (${t} - 32) / 1.8 / (243.12 + (${t} - 32) / 1.8)) / (17.62 - ln(${rh} / 100) - 17.62 * (${t} - 32) / 1.8 / (243.12 + (${t} - 32) / 1.8))) * 1.8 + 32`;

/**
 * DuckDB reads the file (types told by itself) and answers what the analysis is made of: dew points of every row, means and dry
 * share, hour by month, days, runs with their lengths, and the longest wet spell. It makes no load line with interval, no causes and no findings, which ours does.
 */
const QUESTIONS = (file: string) => [
  `CREATE OR REPLACE TEMP TABLE log AS SELECT "Local time" AS stamp, "Indoor temperature F" AS ti, "Indoor RH %" AS rh,
     "Outdoor temperature F" AS tout, "Outdoor RH %" AS rho, "Cool stage 1 (sec)" / 300 AS first, "Cool stage 2 (sec)" / 300 AS second, "Fan (sec)" / 300 AS fan,
     ${DEW_POINT('"Indoor temperature F"', '"Indoor RH %"')} AS dpi, ${DEW_POINT('"Outdoor temperature F"', '"Outdoor RH %"')} AS dpo
   FROM read_csv('${file}')`,
  "SELECT count(*), avg(rh), avg(dpi), avg(dpo), avg((rh <= 55)::INT), avg((rh BETWEEN 50 AND 60)::INT), quantile_cont(rh, [0.05, 0.5, 0.95]) FROM log",
  "SELECT month(stamp), hour(stamp), avg(rh) FROM log GROUP BY 1, 2 ORDER BY 1, 2",
  "SELECT hour(stamp), avg(first), avg(second), avg(fan) FROM log GROUP BY 1 ORDER BY 1",
  "SELECT stamp::DATE, avg(tout), avg(first * 19000 + second * 8000), max(tout) FROM log GROUP BY 1 ORDER BY 1",
  `WITH marked AS (SELECT stamp, first > 0 AS runs, first > 0 AND NOT coalesce(lag(first > 0) OVER (ORDER BY stamp), false) AS starts FROM log),
     numbered AS (SELECT runs, sum(starts::INT) OVER (ORDER BY stamp) AS run FROM marked)
   SELECT minutes, count(*) FROM (SELECT run, 5 * count(*) AS minutes FROM numbered WHERE runs GROUP BY run) GROUP BY minutes ORDER BY minutes`,
  `WITH marked AS (SELECT stamp, rh > 55 AS wet, rh > 55 AND NOT coalesce(lag(rh > 55) OVER (ORDER BY stamp), false) AS starts FROM log),
     numbered AS (SELECT wet, sum(starts::INT) OVER (ORDER BY stamp) AS spell FROM marked)
   SELECT max(hours) FROM (SELECT count(*) / 12 AS hours FROM numbered WHERE wet GROUP BY spell)`,
];

const middle = (values: readonly number[]) =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? 0;

/** Reading and analysing a year of a log, beside DuckDB reading and aggregating the same file, on one thread as on all. */
export async function yearLogLines(mark: (met: boolean) => string): Promise<readonly string[]> {
  const folder = mkdtempSync(path.join(tmpdir(), "dewledger-log-"));
  const file = path.join(folder, "year.csv");
  const text = yearLog();
  writeFileSync(file, text);
  const bytes = new TextEncoder().encode(text);
  const instance = await DuckDBInstance.create(":memory:");
  const duck = await instance.connect();
  try {
    const ours: { read: number; all: number }[] = [];
    const theirs: number[] = [];
    let [dryShare, duckDry] = [0, 0];
    for (let turn = -WARM_UP; turn < TURNS; turn++) {
      const from = performance.now();
      const log = readLogFile(bytes, { zone: "America/Chicago", mapping: null });
      if (log.kind === "refused") throw new Error(log.reason);
      const read = performance.now() - from;
      const analysis = analyzeLog(log.samples, CONTEXT);
      const all = performance.now() - from;
      if (turn >= 0) ours.push({ read, all });
      dryShare = analysis.humidity?.dryShare ?? Number.NaN;
      const duckFrom = performance.now();
      for (const [index, question] of QUESTIONS(file).entries()) {
        const rows = await (await duck.runAndReadAll(question)).getRows();
        if (index === 1) duckDry = Number(rows[0]?.[4]);
      }
      if (turn >= 0) theirs.push(performance.now() - duckFrom);
    }
    const [all, read, other] = [
      middle(ours.map((one) => one.all)),
      middle(ours.map((one) => one.read)),
      middle(theirs),
    ];
    // The clock changes of a year take 12 repeated rows from ours or none: the shares agree to a row in a thousand.
    if (!(Math.abs(dryShare - duckDry) < 1e-3))
      throw new Error(`Dry share ${dryShare} is not DuckDB's ${duckDry}.`);
    return [
      `a year of a log, ${ROWS.toLocaleString("en-US")} rows, read and analysed: ${all.toFixed(0)} ms (${read.toFixed(0)} of it reading); aim ≤ 1,000 ms ${mark(all <= 1_000)}; ${(all / other).toFixed(2)} × DuckDB reading and aggregating the file (${other.toFixed(0)} ms); aim ≤ 1 ${mark(all <= other)}`,
    ];
  } finally {
    duck.closeSync();
    instance.closeSync();
    rmSync(folder, { recursive: true });
  }
}
