import { expect, it } from "vitest";
import { type LogFile, readLogFile } from "@/lib/schemas/log-file";

const read = (text: string): LogFile => {
  const result = readLogFile(text, { zone: "America/Chicago", mapping: null });
  if (result.kind !== "read") throw new Error(`${result.code}: ${result.reason}`);
  return result;
};
const stamp = (minute: number) => new Date(Date.UTC(2024, 4, 1) + minute * 60_000).toISOString().slice(0, 16);
const rows = (heading: string, minutes: readonly number[], cells: (index: number) => string) =>
  [heading, ...minutes.map((minute, index) => `${stamp(minute)},${cells(index)}`)].join("\n");
const every = (step: number, count: number, from = 0) =>
  Array.from({ length: count }, (_, index) => from + step * index);

it("humidity of 0 and of 100 % is taken, 100.1 % and −0.1 % are not", () => {
  const given = ["0", "100", "100.1", "-0.1", "50"];
  const file = read(rows("time,indoor_temp_F,indoor_RH", every(5, 5), (index) => `70,${given[index]}`));
  expect([...(file.samples.channels.indoorRhPct ?? [])]).toEqual([0, 100, Number.NaN, Number.NaN, 50]);
  expect(file.refused.map(({ row, heading }) => `${row} ${heading}`)).toEqual(["4 indoor_RH", "5 indoor_RH"]);
});

it("°C under a heading that says °F: each cell is refused and the reason says that °C would fit", () => {
  const file = read(rows("time,indoor_temp_F,indoor_RH", every(5, 4), (index) => `${21 + 0.1 * index},50`));
  expect(file.refused).toHaveLength(4);
  expect(file.refused.every(({ reason }) => reason.includes("it would fit as °C"))).toBe(true);
  expect([...(file.samples.channels.indoorRhPct ?? [])]).toEqual([50, 50, 50, 50]);
});

it("a log that changes from 5 to 15 minutes keeps every row, and counts what is missing by the usual step", () => {
  const minutes = [...every(5, 60), ...every(15, 10, 310)];
  const file = read(rows("time,indoor_temp_F,indoor_RH", minutes, () => "75,50"));
  expect(file.samples.timeMs).toHaveLength(70);
  expect(file.samples.intervalMin).toBe(5);
  // 295 to 310 and nine steps of 15 minutes: two samples of 5 minutes are missing in each.
  expect(file.gaps.map(({ missingSamples }) => missingSamples)).toEqual(Array(10).fill(2));
});

it("a gap of five weeks is one gap, with its length", () => {
  const weeks = 5 * 7 * 24 * 60;
  const file = read(
    rows("time,indoor_temp_F,indoor_RH", [...every(5, 20), ...every(5, 20, 95 + weeks)], () => "75,50"),
  );
  expect(file.gaps.map(({ missingSamples }) => missingSamples)).toEqual([weeks / 5 - 1]);
});

it("a line of thousands of columns is named and refused before anything is made of it", () => {
  const wide = (text: string) => readLogFile(text, { zone: "America/Chicago", mapping: null });
  const row = "2024-05-01 00:00,70,50";
  expect(wide(`time,indoor_temp_F,indoor_RH${",".repeat(200_000)}\n${row}\n`)).toMatchObject({
    kind: "refused",
    reason: expect.stringMatching(/^Line 1 has 200,003 columns; 1,000 are the most/),
  });
  expect(wide(`time,indoor_temp_F,indoor_RH\n${row}${",1".repeat(200_000)}\n`)).toMatchObject({
    kind: "refused",
    reason: expect.stringMatching(/^Line 2 has /),
  });
  expect(wide(`a,b\n${",\n".repeat(300_000)}${row}\n`)).toMatchObject({ kind: "refused", code: "no table" });
});
