import { DateTime } from "luxon";
import type { LogSamples } from "@/lib/engineering/logs";
import type { YearInput } from "@/lib/engineering/simulation";
import { type LogDays, simulatedLog } from "@/seed/simulated-log";

/** A simulated log read as the import reads its file. */
export function simulatedSamples(input: YearInput, days: LogDays): LogSamples {
  const rows = simulatedLog(input, days)
    .trim()
    .split("\n")
    .slice(1)
    .map((line) => line.split(","));
  const at = rows.map(([text = ""]) => DateTime.fromISO(text.replace(" ", "T"), { zone: days.zone }));
  const column = (place: number, over = 1) => Float64Array.from(rows, (row) => Number(row[place]) / over);
  return {
    timeMs: Float64Array.from(at, (time) => time.toMillis()),
    utcOffsetMin: Int16Array.from(at, (time) => time.offset),
    intervalMin: 5,
    channels: {
      indoorF: column(1),
      indoorRhPct: column(2),
      outdoorF: column(3),
      outdoorRhPct: column(4),
      setpointF: column(5),
      firstStageShare: column(6, 300),
      fanShare: column(8, 300),
    },
  };
}
