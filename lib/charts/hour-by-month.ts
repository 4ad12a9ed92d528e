import { type ChartGeometry, label, path, rectangle, type Tone } from "./geometry";

export type HourByMonthInput = {
  readonly width: number;
  /** `month`: months since January 1970. */
  readonly cells: readonly { readonly month: number; readonly hour: number; readonly meanRhPct: number }[];
  readonly limitPct: number;
  /** A typical year has no number: months stand alone. */
  readonly isTypicalYear?: boolean;
};

/** Steps of humidity and how they look: tone and strength say the same, and the number stands in the table. */
const STEPS: readonly {
  readonly below: number;
  readonly tone: Tone;
  readonly share: number;
  readonly words: string;
}[] = [
  { below: 50, tone: "meets", share: 0.35, words: "below 50 %" },
  { below: 55, tone: "meets", share: 0.7, words: "50 to 55 %" },
  { below: 60, tone: "unsure", share: 0.85, words: "55 to 60 %" },
  { below: Number.POSITIVE_INFINITY, tone: "short", share: 1, words: "60 % and more" },
];
const MONTHS = ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];
const ROW = 20;

/** Mean humidity by hour of the day and month: a row a month, a column an hour. The fuller the cell, the wetter. */
export function hourByMonth(input: HourByMonthInput): ChartGeometry | null {
  const { width, cells, limitPct, isTypicalYear = false } = input;
  if (cells.length === 0) return null;
  const monthText = (month: number) =>
    `${MONTHS[((month % 12) + 12) % 12]}${isTypicalYear ? "" : ` ${1970 + Math.floor(month / 12)}`}`;
  const months = [...new Set(cells.map(({ month }) => month))].sort((a, b) => a - b);
  const left = 70;
  const column = (width - left - 8) / 24;
  const top = 24;
  const bottom = top + months.length * ROW;
  const paths = cells.map(({ month, hour, meanRhPct }) => {
    const step = stepOf(meanRhPct);
    const size = Math.sqrt(step.share);
    const [x, y] = [left + hour * column, top + months.indexOf(month) * ROW];
    const [dx, dy] = [((1 - size) * column) / 2, ((1 - size) * ROW) / 2];
    const d = rectangle(
      round(x + dx + 0.5),
      round(y + dy + 0.5),
      round(x + column - dx - 0.5),
      round(y + ROW - dy - 0.5),
    );
    return path(`${month} ${hour}`, d, step.tone, { kind: "solid" });
  });
  const wettest = cells.reduce((most, cell) => (cell.meanRhPct > most.meanRhPct ? cell : most));
  const above = cells.filter(({ meanRhPct }) => meanRhPct > limitPct).length;
  return {
    width,
    height: bottom + 58,
    paths: [
      ...paths,
      ...STEPS.map(({ tone, share }, index) => {
        const [x, size] = [left + index * 74, 10 * Math.sqrt(share)];
        return path(
          `key ${index}`,
          rectangle(round(x), round(bottom + 42 - size), round(x + size), bottom + 42),
          tone,
          { kind: "solid" },
        );
      }),
    ],
    ticks: [0, 6, 12, 18, 24].map((hour) => {
      const at = round(left + hour * column);
      return { axis: "x" as const, at, text: `${hour}`, guide: [at, top, at, bottom] as const };
    }),
    labels: [
      label("x", 4, 14, "Hour of the day across, months down"),
      ...months.map((month, row) => label(`month ${month}`, 4, top + row * ROW + 14, monthText(month))),
      ...["<50", "50–55", "55–60", "≥60 %"].map((words, index) =>
        label(`key ${words}`, left + 14 + index * 74, bottom + 42, words),
      ),
    ],
    marks: [],
    textAlternative: `The wettest hour is ${wettest.hour}:00 in ${monthText(wettest.month)} with ${wettest.meanRhPct.toFixed(0)} % in the mean; ${above} of ${cells.length} hours of a month are above ${limitPct} %.`,
    tableHead: ["Month", ...Array.from({ length: 24 }, (_, hour) => `${hour}:00`)],
    tableRows: months.map((month) => [
      monthText(month),
      ...Array.from({ length: 24 }, (_, hour) => {
        const cell = cells.find((one) => one.month === month && one.hour === hour);
        return cell === undefined ? "–" : cell.meanRhPct.toFixed(0);
      }),
    ]),
  };
}

const stepOf = (meanRhPct: number) =>
  STEPS.find(({ below }) => meanRhPct < below) ?? { tone: "short" as const, share: 1, words: "" };
const round = (value: number) => Math.round(value * 100) / 100;
