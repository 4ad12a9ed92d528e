import { type ChartGeometry, label, path, rectangle, type Tone } from "./geometry";

export type VerdictSharesGroup = {
  readonly name: string;
  readonly jobs: number;
  readonly counts: Readonly<Record<string, number>>;
};

/** Each verdict with its look; "not judged" is what is left over. Heights differ too, so that they can be told without colour. */
const VERDICTS: readonly { readonly key: string; readonly tone: Tone; readonly height: number }[] = [
  { key: "falls short", tone: "short", height: 1 },
  { key: "can't tell", tone: "unsure", height: 0.75 },
  { key: "not measured", tone: "muted", height: 0.4 },
  { key: "meets", tone: "meets", height: 0.6 },
];
const ROW = 40;
const BAR = 18;
const MOST_NAME = 60;

/** The verdicts of each group's jobs side by side: one bar a group, its whole length all of the group's jobs. `null` without a group. */
export function verdictShares({
  width,
  groups,
}: {
  readonly width: number;
  readonly groups: readonly VerdictSharesGroup[];
}): ChartGeometry | null {
  if (groups.length === 0) return null;
  const [left, right] = [4, width - 4];
  const top = width < 480 ? 58 : 34;
  const each = width < 480 ? (right - left) / 2 : 130;
  const paths = groups.flatMap(({ jobs, counts }, row) => {
    const middle = top + row * ROW + 26;
    let at = left;
    return VERDICTS.flatMap(({ key, tone, height }) => {
      const count = counts[key] ?? 0;
      if (count === 0 || jobs === 0) return [];
      const from = at;
      at += ((right - left) * count) / jobs;
      const half = (BAR * height) / 2;
      return [
        path(`${row} ${key}`, rectangle(round(from), middle - half, round(at), middle + half), tone, {
          kind: "solid",
        }),
      ];
    });
  });
  const shortest = groups.toSorted((a, b) => share(b, "falls short") - share(a, "falls short"))[0];
  return {
    width,
    height: top + groups.length * ROW + 6,
    paths: [
      ...VERDICTS.map(({ key, tone, height }, index) => {
        const [x, y] = keyPlace(index, width < 480, each);
        return path(`key ${key}`, rectangle(x, y - 8 * height, x + 10, y + 1), tone, { kind: "solid" });
      }),
      ...paths,
    ],
    ticks: [],
    labels: [
      ...VERDICTS.map(({ key }, index) => {
        const [x, y] = keyPlace(index, width < 480, each);
        return label(`key ${key}`, x + 14, y, key);
      }),
      ...groups.map(({ name, jobs }, row) =>
        label(
          `name ${row}`,
          left,
          top + row * ROW + 12,
          `${shortened(name)}, ${jobs.toLocaleString("en-US")} ${jobs === 1 ? "job" : "jobs"}`,
        ),
      ),
    ],
    marks: [],
    textAlternative:
      shortest === undefined || share(shortest, "falls short") === 0
        ? "No job of any group falls short."
        : `The largest part falls short at ${shortest.name}: ${shortest.counts["falls short"] ?? 0} of ${shortest.jobs} jobs. Small groups are chance more easily; the table above has the intervals.`,
    tableHead: ["Group", "Jobs", ...VERDICTS.map(({ key }) => key), "not judged"],
    tableRows: groups.map(({ name, jobs, counts }) => {
      const judged = VERDICTS.map(({ key }) => counts[key] ?? 0);
      const left = jobs - judged.reduce((sum, count) => sum + count, 0);
      return [name, String(jobs), ...judged.map(String), String(left)];
    }),
  };
}

const keyPlace = (index: number, isNarrow: boolean, each: number): readonly [number, number] =>
  isNarrow ? [4 + (index % 2) * each, 16 + Math.floor(index / 2) * 20] : [4 + index * each, 16];
const share = ({ counts, jobs }: VerdictSharesGroup, key: string) =>
  jobs === 0 ? 0 : (counts[key] ?? 0) / jobs;
const shortened = (name: string) => (name.length > MOST_NAME ? `${name.slice(0, MOST_NAME - 1)}…` : name);
const round = (value: number) => Math.round(value * 100) / 100;
