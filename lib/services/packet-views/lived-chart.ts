import type { ChartGeometry } from "@/lib/charts/geometry";
import { humidityChart } from "@/lib/charts/humidity-chart";
import type { PacketParts } from "./parts";

/** Width of the chart on the page, in the chart's own units. */
export const CHART_WIDTH = 720;
/** The band in which health and materials fare well in the chart, as on the review page. */
const BAND_LOW_PCT = 50;
/** Longer without a reading is a gap in the line, min. */
const GAP_MIN = 60;

/** A house's log as paper draws it, against the limit promised. `null` without a reading. */
export function livedChart({ points, timeZone }: PacketParts["log"], limitPct: number): ChartGeometry | null {
  return humidityChart({
    readings: points,
    band: { lowPercent: Math.min(BAND_LOW_PCT, limitPct), highPercent: limitPct },
    gapAfterMinutes: GAP_MIN,
    timeZone,
    width: CHART_WIDTH,
    isLow: true,
  });
}
