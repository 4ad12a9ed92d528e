import type { Tone } from "./geometry";
import type { LivedChartInput } from "./lived-input";
import { numberText } from "./number-text";
import { clockText } from "./time-ticks";

export type Line = {
  readonly channel: string;
  readonly name: string;
  readonly tone: Tone;
  readonly dashes: "solid" | "dashed" | "dotted";
};
type Panel = {
  readonly title: string;
  /** The title when a channel is drawn that the log's own days do not have. */
  readonly titleWith?: { readonly channel: string; readonly title: string };
  readonly height: number;
  readonly lines: readonly Line[];
  readonly unit: string;
};

const TYPICAL = "typicalDewPointF";

/** What the chart draws, one panel below the other. */
export const PANELS: readonly Panel[] = [
  {
    title: "Relative humidity, %",
    height: 170,
    unit: "%",
    lines: [{ channel: "indoorRhPct", name: "indoor humidity", tone: "a", dashes: "solid" }],
  },
  {
    title: "Dew point, °F: indoor solid, outdoor dotted",
    titleWith: {
      channel: TYPICAL,
      title: "Dew point, °F: indoor solid; dashed: typical outdoors, not these days’",
    },
    height: 120,
    unit: "°F",
    lines: [
      { channel: "indoorDewPointF", name: "indoor dew point", tone: "d", dashes: "solid" },
      { channel: "outdoorDewPointF", name: "outdoor dew point", tone: "c", dashes: "dotted" },
      { channel: TYPICAL, name: "outdoor dew point of a typical year", tone: "muted", dashes: "dashed" },
    ],
  },
  {
    title: "Indoor temperature, °F: reading solid, setpoint dashed",
    height: 110,
    unit: "°F",
    lines: [
      { channel: "indoorF", name: "indoor temperature", tone: "b", dashes: "solid" },
      { channel: "setpointF", name: "setpoint", tone: "muted", dashes: "dashed" },
    ],
  },
];
/** The readings of a channel that are there. */
export function knownOf(input: LivedChartInput, channel: string): readonly number[] {
  const found = input.channels[channel];
  return found === undefined ? [] : [...found.low, ...found.high].filter((value) => value !== null);
}

/** The chart in sentences. */
export function livedWords(input: LivedChartInput): string {
  const span = `${clockText(input.fromMs, input.timeZone)} to ${clockText(input.toMs, input.timeZone)}`;
  const said = PANELS.flatMap(({ lines, unit }) =>
    lines.flatMap(({ channel, name }) => {
      const values = knownOf(input, channel);
      if (values.length === 0) return [];
      const [least, most] = [
        values.reduce((a, b) => Math.min(a, b)),
        values.reduce((a, b) => Math.max(a, b)),
      ];
      return [`${name} ${numberText(least, 1)} to ${numberText(most, 1)} ${unit}`];
    }),
  );
  return `${span}: ${said.join(", ")}.`;
}

const MOST_ROWS = 60;

/** The chart as a table, which follows the zoom. */
export function livedTable(input: LivedChartInput) {
  const lines = PANELS.flatMap(({ lines: all, unit }) => all.map((line) => ({ ...line, unit }))).filter(
    ({ channel }) => knownOf(input, channel).length > 0,
  );
  const every = Math.max(1, Math.ceil(input.atMs.length / MOST_ROWS));
  return {
    tableHead: ["Time", ...lines.map(({ name, unit }) => `${name}, ${unit}`)],
    tableRows: input.atMs.flatMap((ms, index) => {
      if (index % every !== 0) return [];
      return [
        [
          clockText(ms, input.timeZone),
          ...lines.map(({ channel }) => {
            const value = input.channels[channel]?.high[index] ?? null;
            return value === null ? "–" : numberText(value, 1);
          }),
        ],
      ];
    }),
  };
}
