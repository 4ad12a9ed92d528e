import { extent, tickStep } from "d3-array";
import { scaleLinear } from "d3-scale";
import type { ChartTick, Plot } from "./geometry";
import { numberText } from "./number-text";

export type Axis = {
  /** Where a value lies, in the chart's units. */
  readonly at: (value: number) => number;
  readonly domain: readonly [low: number, high: number];
  readonly ticks: readonly { readonly at: number; readonly text: string }[];
};

/** Relative distance below which two values are one place on a screen. */
const SAME = 1e-9;

/**
 * An axis that holds every value and ends on round numbers, with about `count` ticks.
 * A single value, or values closer than a float can place apart, get room on both sides. The step is chosen once: rounding the ends and choosing again, as
 * d3's `nice` does, can leave a third of the chart empty.
 */
export function axisOver(values: readonly number[], range: readonly [number, number], count: number): Axis {
  const [least, most] = extent(values);
  if (least === undefined || most === undefined) throw new RangeError("An axis needs at least one value.");
  const isOne = most - least <= SAME * Math.max(1, Math.abs(least), Math.abs(most));
  const [from, to] = isOne ? [least - 1, most + 1] : [least, most];
  const step = tickStep(from, to, count);
  const first = Math.floor(from / step + 1e-9);
  const last = Math.ceil(to / step - 1e-9);
  const domain = [first * step, last * step] as const;
  const scale = scaleLinear().domain(domain).range(range);
  // To the hundredth: two machines may differ in a float's last digit, and the server's drawing must be the browser's.
  const at = (value: number) => Math.round(100 * scale(value)) / 100;
  const decimals = Math.max(0, Math.ceil(-Math.log10(step) - 1e-9));
  const ticks = Array.from({ length: last - first + 1 }, (_, index) => {
    const value = (first + index) * step;
    return { at: at(value), text: numberText(value, decimals) };
  });
  return { at, domain, ticks };
}

/** Ticks along the foot of a plot. */
export function xTicks(axis: Axis, plot: Plot): readonly ChartTick[] {
  return axis.ticks.map(({ at, text }) => ({ axis: "x", at, text, guide: [at, plot.top, at, plot.bottom] }));
}

/** Ticks along a side of a plot: `y` at the left, `y2` at the right. */
export function yTicks(axis: Axis, plot: Plot, side: "y" | "y2" = "y"): readonly ChartTick[] {
  return axis.ticks.map(({ at, text }) => ({ axis: side, at, text, guide: [plot.left, at, plot.right, at] }));
}
