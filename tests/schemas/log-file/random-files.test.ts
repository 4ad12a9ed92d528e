import fc from "fast-check";
import { expect, it } from "vitest";
import { LOG_CHANNELS, LOG_RANGES } from "@/lib/engineering/logs";
import { readLogFile } from "@/lib/schemas/log-file";

const RUNS = Number(process.env.DEWLEDGER_RANDOM_RUNS ?? 2000);

const cell = fc.oneof(
  { weight: 4, arbitrary: fc.double({ min: -40, max: 400, noNaN: true }).map((value) => value.toFixed(1)) },
  fc.constantFrom("", "NA", "on", "1e999", '"quoted, ""twice"""', "NaN", "-", "21,5"),
  fc.string({ maxLength: 8 }),
);
/** Rows five minutes apart, some doubled, out of place or unreadable; around a change of clock. */
const row = fc.tuple(
  fc.oneof(
    { weight: 12, arbitrary: fc.integer({ min: -2, max: 2 }) },
    fc.constantFrom("2023-11-05 24:00", "05/11/2023 1:00", "", "2023-02-30 00:00", "noon"),
  ),
  cell,
  cell,
  cell,
);
const dateOf = (step: number) =>
  new Date(Date.UTC(2023, 10, 5, 0, 30) + step * 300_000).toISOString().slice(0, 16);

it("any table is read within the laws or refused with a reason; every row is accounted for", () => {
  let read = 0;
  fc.assert(
    fc.property(fc.array(row, { maxLength: 40 }), fc.constantFrom(",", ";", "\t"), (rows, delimiter) => {
      const text = [
        ["time", "indoor_temp_F", "indoor_RH", "cool_1_sec"],
        ...rows.map(([time, ...cells], index) => [
          typeof time === "number" ? dateOf(index + time) : time,
          ...cells,
        ]),
      ]
        .map((cells) => cells.join(delimiter))
        .join("\n");
      const file = readLogFile(text, { zone: "America/New_York", mapping: null });
      if (file.kind === "refused") {
        expect(file.reason.length).toBeGreaterThan(10);
        return;
      }
      read++;
      const { timeMs, channels } = file.samples;
      for (let index = 1; index < timeMs.length; index++) {
        expect(timeMs[index] ?? 0).toBeGreaterThan(timeMs[index - 1] ?? 0);
      }
      const refusedRows = file.refused.filter(({ heading }) => heading === null).length;
      expect(timeMs.length + file.duplicates.length + refusedRows).toBe(file.rowCount);
      for (const channel of LOG_CHANNELS) {
        const [min, max] = LOG_RANGES[channel];
        for (const value of channels[channel] ?? []) {
          if (!Number.isNaN(value)) expect(value >= min && value <= max).toBe(true);
        }
      }
    }),
    { seed: 81, numRuns: RUNS },
  );
  expect(read).toBeGreaterThan(RUNS / 10);
});

it("any bytes are answered, never thrown at", () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 300 }), (bytes) => {
      expect(["read", "refused"]).toContain(readLogFile(bytes, { zone: "UTC", mapping: null }).kind);
    }),
    { seed: 82, numRuns: RUNS },
  );
});
