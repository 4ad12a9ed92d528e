import { monthRanges } from "@/lib/charts/month-ranges";
import { numberText } from "@/lib/charts/number-text";
import type { ForecastRange } from "@/lib/engineering/simulation";
import type { PacketForecast } from "@/lib/reports/homeowner/view";
import type { HomeownerTexts } from "./homeowner-text-types";
import { CHART_WIDTH } from "./packet-views/lived-chart";
import type { PacketParts } from "./packet-views/parts";
import { stripOf } from "./packet-views/targets";

/** What the forecast kept with the job promises, in ranges; `null` while none is kept. */
export function forecastView(
  { context, evaluation }: PacketParts,
  texts: HomeownerTexts,
): PacketForecast | null {
  const { forecast, limits } = context;
  if (forecast === null) return null;
  const { forecast: words } = texts;
  // Numbers of another design would be a promise nobody makes.
  if (forecast.stale)
    return {
      sentence: words.changedSince(forecast.keptAt.slice(0, 10)),
      words: "",
      figures: [],
      chart: null,
    };
  const { dryHours, hoursAboveLimit } = forecast.figures.ranges;
  const hours = dryHours.central + hoursAboveLimit.central;
  const needed = (limits["logs.dryShareMinPct"] / 100) * hours;
  const whole = (value: number) => numberText(value, 0);
  const { verdict } = evaluation.ledger.find((line) => line.key === "forecast-dry-hours") ?? {
    verdict: null,
  };
  const { low, high } = dryHours;
  const rangeOf = (range: ForecastRange) =>
    whole(range.low) === whole(range.high) ? "" : words.range(whole(range.low), whole(range.high));
  return {
    sentence: words.sentence(forecast),
    words: words.restsOn(whole(forecast.figures.membersRun)),
    figures: [
      {
        label: words.dryHours,
        value: whole(dryHours.central),
        unit: "h",
        verdict,
        aim: words.ofHours(whole(needed), whole(hours)),
        plainWords: `${words.dryHoursMean} ${rangeOf(dryHours)}`.trim(),
        strip: stripOf({ min: needed, max: hours }, dryHours.central, { low, high }),
      },
      {
        label: words.hoursAbove,
        value: whole(hoursAboveLimit.central),
        unit: "h",
        verdict: null,
        aim: null,
        plainWords: rangeOf(hoursAboveLimit) || null,
        strip: null,
      },
    ],
    // Twelve empty months are no picture.
    chart:
      whole(hoursAboveLimit.high) === "0"
        ? null
        : monthRanges(
            {
              width: CHART_WIDTH,
              limitPct: forecast.humidityLimitPct,
              months: forecast.figures.hoursAboveLimitByMonth,
            },
            words.months ?? undefined,
          ),
  };
}
