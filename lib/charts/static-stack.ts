import { axisOver, xTicks } from "./axes";
import { type ChartGeometry, label, type Plot, path, rectangle } from "./geometry";
import { capital, numberText } from "./number-text";

export type StaticStackInput = {
  /** The pressure drops in the air's order. */
  readonly parts: readonly {
    readonly key: string;
    readonly label: string;
    readonly dropInWc: number;
    /** Read with an instrument, or taken from a table or a rule. */
    readonly measured: boolean;
  }[];
  /** What the blower can give at this airflow; `null` when not known. */
  readonly limit: { readonly label: string; readonly inWc: number } | null;
  readonly width: number;
};

const ROW = 30;
const BAR = 16;

/** Pressure drops one after another, each beginning where the last ended, against the limit. `null` without parts. */
export function staticStack(input: StaticStackInput): ChartGeometry | null {
  if (input.parts.length === 0) return null;
  const nameWidth = input.width < 500 ? 104 : 190;
  const plot: Plot = {
    left: nameWidth,
    top: 30,
    right: input.width - 54,
    bottom: 30 + ROW * (input.parts.length + 1),
  };
  const steps = cumulative(input.parts);
  const totalInWc = steps.at(-1)?.toInWc ?? 0;
  const limitInWc = input.limit?.inWc ?? null;
  const ends = [0, ...steps.map((step) => step.toInWc), ...(limitInWc === null ? [] : [limitInWc])];
  const x = axisOver(ends, [plot.left, plot.right], input.width < 500 ? 3 : 6);
  const totalY = plot.top + ROW * input.parts.length;

  return {
    width: input.width,
    height: plot.bottom + 46,
    paths: [
      ...steps.map((step, index) => {
        const top = plot.top + ROW * index + (ROW - BAR) / 2;
        const bar = rectangle(x.at(step.fromInWc), top, x.at(step.toInWc), top + BAR);
        // What nobody measured is drawn hollow.
        return path(
          step.key,
          bar,
          "a",
          step.measured ? { kind: "solid" } : { dashes: "dashed", weight: 1.5 },
        );
      }),
      ...steps.map((step, index) =>
        path(`to-${step.key}`, `M${x.at(step.toInWc)},${plot.top + ROW * index + BAR}v${ROW}`, "muted", {
          dashes: "dotted",
          weight: 1,
        }),
      ),
      path("total", rectangle(x.at(0), totalY + 4, x.at(totalInWc), totalY + 26), "ink", {
        kind: "solid",
      }),
      ...(limitInWc === null
        ? []
        : [
            path("limit", `M${x.at(limitInWc)},${plot.top - 6}V${plot.bottom}`, "short", {
              dashes: "dashed",
            }),
          ]),
    ],
    ticks: xTicks(x, plot),
    labels: [
      label("x", plot.left, plot.bottom + 38, "Static pressure, in. w.c."),
      ...steps.flatMap((step, index) => {
        const y = plot.top + ROW * index + ROW / 2 + 4;
        return [
          label(step.key, nameWidth - 8, y, step.label, { anchor: "end", tone: "ink" }),
          label(`value-${step.key}`, x.at(step.toInWc) + 5, y, numberText(step.dropInWc, 2)),
        ];
      }),
      label("total", nameWidth - 8, totalY + 19, "Total", { anchor: "end", tone: "ink", strong: true }),
      label("value-total", x.at(totalInWc) + 5, totalY + 19, numberText(totalInWc, 2), {
        tone: "ink",
        strong: true,
      }),
      ...(input.limit === null
        ? []
        : [
            label(
              "limit",
              x.at(input.limit.inWc),
              plot.top - 12,
              `${input.limit.label} ${numberText(input.limit.inWc, 2)}`,
              {
                anchor: "middle",
                tone: "short",
              },
            ),
          ]),
    ],
    marks: [],
    textAlternative: words(input, totalInWc),
    tableHead: ["Part", "Drop, in. w.c.", "Sum so far, in. w.c.", "Origin"],
    tableRows: steps.map((step) => [
      step.label,
      numberText(step.dropInWc, 2),
      numberText(step.toInWc, 2),
      step.measured ? "measured" : "not measured",
    ]),
  };
}

function cumulative(parts: StaticStackInput["parts"]) {
  let sum = 0;
  return parts.map((part) => {
    const fromInWc = sum;
    sum += part.dropInWc;
    return { ...part, fromInWc, toInWc: sum };
  });
}

function words(input: StaticStackInput, totalInWc: number): string {
  const parts = input.parts.map(
    (part) => `${part.label} ${numberText(part.dropInWc, 2)}${part.measured ? "" : " (not measured)"}`,
  );
  const limit =
    input.limit === null
      ? "The limit is not known."
      : `${capital(input.limit.label)} ${numberText(input.limit.inWc, 2)} in. w.c.`;
  return `Pressure drops in in. w.c.: ${parts.join(", ")}; total ${numberText(totalInWc, 2)}. ${limit}`;
}
