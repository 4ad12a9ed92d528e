import type { ChartGeometry } from "@/lib/charts/geometry";
import { numberText } from "@/lib/charts/number-text";
import { plainFigure } from "@/lib/reports/figures";
import type { PacketLived } from "@/lib/reports/homeowner/view";
import type { HomeownerTexts } from "./homeowner-text-types";
import type { LogPoint } from "./log-view";
import { livedChart } from "./packet-views/lived-chart";
import type { PacketParts } from "./packet-views/parts";

/** How the house has lived, by its own log; `null` while there is none. */
export function livedView(
  { log, context, evaluation }: PacketParts,
  texts: HomeownerTexts,
): PacketLived | null {
  const { log: summary } = context;
  if (!summary || log.limitPct === null) return null;
  const { verdict } = evaluation.ledger.find((line) => line.key === "dry-hours") ?? { verdict: null };
  const figure = (label: string, value: number, unit: string) =>
    plainFigure(label, numberText(value, 0), unit);
  const chart = livedChart(log, log.limitPct);
  const [from, to] = [summary.firstAt.slice(0, 10), summary.lastAt.slice(0, 10)];
  return {
    period: texts.period(from, to),
    figures: [
      {
        ...figure(texts.dryHours, summary.dryHours, "h"),
        verdict,
        aim: texts.ofLogged(numberText(summary.loggedHours, 0)),
      },
      figure(texts.time50to60, summary.share50To60Pct, "%"),
      figure(texts.meanHumidity, summary.meanRhPct, "%"),
    ],
    chart: chart === null ? null : inLanguage(chart, log.points, log.limitPct, [from, to], texts),
    words: texts.logWords,
  };
}

/** The chart's words in the packet's language; its lines stay as they are on screen. */
function inLanguage(
  chart: ChartGeometry,
  points: readonly LogPoint[],
  limitPct: number,
  [from, to]: readonly [string, string],
  { chart: words }: HomeownerTexts,
): ChartGeometry {
  if (words === null) return chart;
  const humidities = points.flatMap((point) => point.relativeHumidityPercent ?? []);
  // Taken one by one: a year of readings is more than a call can carry as arguments.
  const lowest = humidities.reduce((least, one) => Math.min(least, one), Number.POSITIVE_INFINITY);
  const highest = humidities.reduce((most, one) => Math.max(most, one), Number.NEGATIVE_INFINITY);
  return {
    ...chart,
    labels: chart.labels.map((label) => ({
      ...label,
      text: words.labels[label.text] ?? label.text.replace(/^limit /, "límite "),
    })),
    ticks: chart.ticks.map((tick) => ({
      ...tick,
      text: tick.text.replaceAll(/[A-Z][a-z]{2}/g, (month) => words.months[month] ?? month),
    })),
    textAlternative: words.said({
      from,
      to,
      readings: numberText(humidities.length, 0),
      lowest: numberText(lowest, 0),
      highest: numberText(highest, 0),
      above: numberText(humidities.filter((value) => value > limitPct).length, 0),
      limit: numberText(limitPct, 0),
    }),
  };
}
