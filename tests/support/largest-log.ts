import { analyzeLog } from "@/lib/engineering/logs";
import { daysOfSamples } from "@/lib/services/log-days";
import { readLogUpload } from "@/lib/services/log-upload";
import { yearLog } from "../bench/year-log";
import { mostMemoryMb } from "./most-memory";

/*
 * Run in a process of its own, whose memory is then measured: what the queue does with one log, without the database. Prints the rows
 * taken or the reason why none were, and the most memory the process ever held, MB.
 */
const rows = Number(process.argv[2]);
const MB = 1_048_576;

/** One month of rows again and again, written as bytes: the text of five million rows would weigh more than reading them. */
function log(): Uint8Array {
  const month = yearLog(43_200, 1);
  const heading = month.slice(0, month.indexOf("\n") + 1);
  const lines = month.slice(heading.length).split("\n").slice(0, -1);
  const bytes = new Uint8Array(heading.length + rows * 64);
  const encoder = new TextEncoder();
  let size = encoder.encodeInto(heading, bytes).written;
  for (let row = 0; row < rows; row++) {
    const stamp = new Date(Date.UTC(2020, 0, 1) + row * 60_000).toISOString();
    const rest = (lines[row % lines.length] ?? "").slice(16);
    size += encoder.encodeInto(
      `${stamp.slice(0, 10)} ${stamp.slice(11, 16)}${rest}\n`,
      bytes.subarray(size),
    ).written;
  }
  return bytes.subarray(0, size);
}

const bytes = log();
let said: string;
try {
  const read = await readLogUpload({ fileName: "large.csv", bytes, mapping: null }, "UTC");
  analyzeLog(read.samples, {
    humidityLimitPct: 55,
    elevationFt: 50,
    deliveredSensibleBtuhByStage: [19_000, 27_000],
    design: { outdoorF: 95, sensibleBtuh: 26_000 },
  });
  said = `${read.samples.timeMs.length} rows, ${daysOfSamples(read.samples, "UTC").length} days`;
} catch (error) {
  said = error instanceof Error ? error.message : String(error);
}
const mostMb = mostMemoryMb();
process.stdout.write(JSON.stringify({ said, fileMb: bytes.length / MB, mostMb }));
