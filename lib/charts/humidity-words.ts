import { group, max, min } from "d3-array";
import type { HumidityChartInput, HumidityReading } from "./humidity-input";
import { numberText } from "./number-text";
import type { Point } from "./segments";
import { clockText } from "./time-ticks";

/** Up to this many readings the table lists each; beyond, each day. */
const LISTED = 60;

/** The chart in sentences. */
export function humidityWords(
  input: HumidityChartInput,
  humidities: readonly number[],
  stretches: number,
  fromMs: number,
  toMs: number,
): string {
  const { lowPercent, highPercent } = input.band;
  const over = humidities.filter((value) => value > highPercent).length;
  const gaps = stretches - 1;
  return [
    `Relative humidity from ${clockText(fromMs, input.timeZone)} to ${clockText(toMs, input.timeZone)}:`,
    `${numberText(humidities.length, 0)} readings between ${numberText(min(humidities) ?? 0, 0)} % and`,
    `${numberText(max(humidities) ?? 0, 0)} %, of which ${numberText(over, 0)} above the limit of ${highPercent} %.`,
    `The band reaches from ${lowPercent} % to ${highPercent} %.`,
    gaps === 0 ? "No gaps." : gaps === 1 ? "1 gap." : `${gaps} gaps.`,
  ].join(" ");
}

/** The chart's numbers as rows. */
export function humidityTable(input: HumidityChartInput) {
  const { readings, timeZone } = input;
  if (readings.length <= LISTED) {
    return {
      tableHead: ["Time", "Relative humidity, %", "Dew point, °F"],
      tableRows: readings.map((reading) => [
        clockText(reading.atMs, timeZone),
        cellText(reading.relativeHumidityPercent),
        cellText(reading.dewPointF ?? null),
      ]),
    };
  }
  const days = group(readings, (reading) => clockText(reading.atMs, timeZone, "d LLL yyyy"));
  return {
    tableHead: ["Day", "Readings", "Lowest, %", "Highest, %", "Highest dew point, °F"],
    tableRows: Array.from(days, ([day, ofDay]) => {
      const values = known(ofDay, (reading) => reading.relativeHumidityPercent);
      const dews = known(ofDay, (reading) => reading.dewPointF ?? null);
      return [
        day,
        numberText(values.length, 0),
        cellText(min(values) ?? null),
        cellText(max(values) ?? null),
        cellText(max(dews) ?? null),
      ];
    }),
  };
}

/** The area between the limit and the line where the line is above it; its corners lie on the exact crossings. */
export function above(
  stretch: readonly Point[],
  limit: number,
  x: (value: number) => number,
  y: (value: number) => number,
): string {
  const parts: string[] = [];
  let open: string[] = [];
  const close = () => {
    if (open.length > 1) parts.push(`M${open.join("L")}Z`);
    open = [];
  };
  stretch.forEach((point, index) => {
    const before = stretch[index - 1];
    const over = point[1] > limit;
    if (before !== undefined && before[1] > limit !== over) {
      const share = (limit - before[1]) / (point[1] - before[1]);
      open.push(corner(x(before[0] + share * (point[0] - before[0])), y(limit)));
      if (!over) close();
    } else if (over && before === undefined) open.push(corner(x(point[0]), y(limit)));
    if (over) open.push(corner(x(point[0]), y(point[1])));
  });
  const last = stretch.at(-1);
  if (last !== undefined && open.length > 0) open.push(corner(x(last[0]), y(limit)));
  close();
  return parts.join("");
}

function corner(x: number, y: number): string {
  return `${x.toFixed(1)},${y.toFixed(1)}`;
}

function known(
  readings: readonly HumidityReading[],
  read: (reading: HumidityReading) => number | null,
): readonly number[] {
  return readings.flatMap((reading) => read(reading) ?? []);
}

function cellText(value: number | null): string {
  return value === null ? "no reading" : numberText(value, 1);
}
