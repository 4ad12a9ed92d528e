import { readFileSync } from "node:fs";
import { parse } from "csv-parse/sync";
import { describe, expect, it } from "vitest";
import { readLogFile } from "@/lib/schemas/log-file";

const SOURCE =
  "Appliances Energy Prediction data set, UCI, CC BY 4.0 (Candanedo et al., Energy and Buildings 140, 2017) [F]: 10-minute rows of a Belgian house, day first, °C";
const bytes = readFileSync(new URL("../../fixtures/house-log/measured-house-2016-a.csv", import.meta.url));
/** Read by csv-parse alone: none of the code under test. */
const raw: Record<string, string>[] = parse(bytes, { columns: true });

describe(`a measured house: ${SOURCE}`, () => {
  const read = readLogFile(bytes, { zone: "Europe/Brussels", mapping: null });
  if (read.kind !== "read") throw new Error(read.reason);

  it("suggests rooms, weather station and units by headings and values", () => {
    expect(read.mapping.timeHeading).toBe("date");
    expect(read.mapping.dateOrder).toBe("day-month-year");
    expect(
      Object.fromEntries(read.mapping.columns.map((one) => [one.channel, `${one.heading} ${one.unit}`])),
    ).toEqual({
      indoorF: "T1 °C",
      indoorRhPct: "RH_1 %",
      outdoorF: "T_out °C",
      outdoorRhPct: "RH_out %",
      outdoorDewPointF: "Tdewpoint °C",
    });
  });

  it("every row is taken or told of", () => {
    expect(read.rowCount).toBe(raw.length);
    expect(raw).toHaveLength(6_768);
    expect(read.samples.timeMs.length + read.duplicates.length).toBe(6_768);
    expect(read.refused).toEqual([]);
    expect(read.intervalMin).toBe(10);
    expect(read.reorderedRows).toBe(0);
  });

  it("the summer-time change of 27 March 2016 is flagged: the logger's clock did not skip the hour", () => {
    // 02:00 to 02:50 local does not exist that day, and 03:00 goes on where 02:50 ended: the clock never changed.
    const lineOf = (words: string) => raw.findIndex(({ date }) => date === words) + 2;
    expect(read.clockChanges).toMatchObject([
      {
        kind: "skipped hour",
        rows: 6,
        fromLine: lineOf("27/03/2016 2:00"),
        toLine: lineOf("27/03/2016 2:50"),
      },
    ]);
    expect([read.duplicates, read.gaps]).toEqual([[], []]);
    expect(read.samples.timeMs.at(-1)).toBe(Date.UTC(2016, 2, 31, 22, 50));
    expect(read.samples.utcOffsetMin.at(-1)).toBe(120);
  });

  it("in a zone without changes nothing is doubled and nothing is missing", () => {
    const fixed = readLogFile(bytes, { zone: "UTC+1", mapping: null });
    if (fixed.kind !== "read") throw new Error(fixed.reason);
    expect(fixed.samples.timeMs).toHaveLength(6_768);
    expect([fixed.duplicates, fixed.gaps, fixed.clockChanges]).toEqual([[], [], []]);
    expect(fixed.samples.timeMs[0]).toBe(Date.UTC(2016, 1, 13, 23, 0));
    expect(fixed.samples.timeMs.at(-1)).toBe(Date.UTC(2016, 2, 31, 22, 50));
  });

  it("means are those of plain arithmetic on the raw columns", () => {
    const fixed = readLogFile(bytes, { zone: "UTC+1", mapping: null });
    if (fixed.kind !== "read") throw new Error(fixed.reason);
    const rawMean = (heading: string) => raw.reduce((sum, row) => sum + Number(row[heading]), 0) / raw.length;
    const mean = (values: Float64Array | undefined) =>
      (values ?? new Float64Array()).reduce((a, b) => a + b, 0) / (values?.length ?? 0);
    const { channels } = fixed.samples;
    expect(mean(channels.indoorF)).toBeCloseTo(rawMean("T1") * 1.8 + 32, 8);
    expect(mean(channels.indoorRhPct)).toBeCloseTo(rawMean("RH_1"), 8);
    expect(mean(channels.outdoorF)).toBeCloseTo(rawMean("T_out") * 1.8 + 32, 8);
    expect(mean(channels.outdoorRhPct)).toBeCloseTo(rawMean("RH_out"), 8);
  });
});
