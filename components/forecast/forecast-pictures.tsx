"use client";

import { ChartFigure } from "@/components/charts/chart-figure";
import { ThermostatTimeline } from "@/components/charts/charts";
import { forecastHumidity } from "@/lib/charts/forecast-humidity";
import { hourByMonth } from "@/lib/charts/hour-by-month";
import { COOLING_HOURS, MEAN_HUMIDITY, monthRanges } from "@/lib/charts/month-ranges";
import { numberText } from "@/lib/charts/number-text";
import { dayOfYearText, MONTH_NAMES, stageRuns } from "@/lib/domain/forecast";
import type { OptionForecast } from "@/lib/engineering/simulation";

type Props = {
  readonly option: OptionForecast;
  readonly limitPct: number;
  readonly setpointF: number;
};

const NO_MONTH = { central: 0, low: 0, high: 0 };

/** One hot day, one mild wet week and the year of one option, with the house as assumed. */
export function ForecastPictures({ option, limitPct, setpointF }: Props) {
  return (
    <div className="grid gap-4">
      <ChartFigure
        title={`Hours above ${limitPct} % by month: ${option.name}`}
        geometryAt={(width) => monthRanges({ width, limitPct, months: option.hoursAboveLimitByMonth })}
        empty="No month has been run yet."
      />
      <ChartFigure
        title={`Humidity by hour and month: ${option.name}`}
        geometryAt={(width) =>
          hourByMonth({ width, limitPct, cells: option.pictures.hourByMonth, isTypicalYear: true })
        }
        empty="No month has been run yet."
      />
      <ChartFigure
        title={`Mean humidity by month: ${option.name}`}
        geometryAt={(width) =>
          monthRanges(
            { width, limitPct, months: option.meanRhPctByMonth.map((month) => month ?? NO_MONTH) },
            MEAN_HUMIDITY,
          )
        }
        empty="No month has been run yet."
      />
      <ChartFigure
        title={`Hours of cooling by month: ${option.name}`}
        geometryAt={(width) =>
          monthRanges({ width, limitPct, months: option.coolingHoursByMonth }, COOLING_HOURS)
        }
        empty="No month has been run yet."
      />
      <HotDay option={option} setpointF={setpointF} />
      <MildWeek option={option} limitPct={limitPct} />
      <Year option={option} limitPct={limitPct} />
    </div>
  );
}

function HotDay({ option, setpointF }: Pick<Props, "option" | "setpointF">) {
  const { hotDay } = option.pictures;
  const { minutes } = hotDay;
  const hottest = Math.max(...hotDay.outdoorF);
  return (
    <ThermostatTimeline
      title={`The hottest day, ${dayOfYearText(hotDay.firstHour)}: ${option.name}`}
      note={`Outdoors up to ${numberText(hottest, 0)} °F; humidity in the rooms ${numberText(Math.min(...hotDay.roomRhPct), 0)} to ${numberText(Math.max(...hotDay.roomRhPct), 0)} %.`}
      roomF={(minutes?.roomF ?? []).map((dryBulbF, atMin) => ({ atMin, dryBulbF }))}
      setpointF={[{ atMin: 0, setpointF }]}
      runs={stageRuns(minutes?.stage ?? [])}
      endMin={1_440}
      isDay
      gapAfterMin={5}
    />
  );
}

function MildWeek({ option, limitPct }: Pick<Props, "option" | "limitPct">) {
  const week = option.pictures.mildWetWeek;
  const wet = week?.roomRhPct.filter((pct) => pct > limitPct).length ?? 0;
  const ran = (week?.runMinutes ?? []).reduce((sum, one) => sum + one, 0) / 60;
  const day = (hour: number) => dayOfYearText((week?.firstHour ?? 0) + hour);
  return (
    <ChartFigure
      title={`A mild wet week: ${option.name}`}
      geometryAt={(width) =>
        week === null
          ? null
          : forecastHumidity({
              width,
              limitPct,
              meanPct: week.roomRhPct,
              highestPct: null,
              runShare: week.runMinutes.map((minutes) => minutes / 60),
              ticks: Array.from({ length: 7 }, (_, place) => ({ step: place * 24, text: day(place * 24) })),
              stepName: "Hour",
              steps: week.roomRhPct.map((_, hour) => `${day(hour)} ${hour % 24}:00`),
              words: `From ${day(0)}: outdoors ${numberText(Math.min(...week.outdoorF), 0)} to ${numberText(Math.max(...week.outdoorF), 0)} °F. ${wet} of ${week.roomRhPct.length} hours are above ${limitPct} %, while cooling runs ${numberText(ran, 0)} h.`,
            })
      }
      empty="This weather has no week that is mild and wet."
    />
  );
}

function Year({ option, limitPct }: Pick<Props, "option" | "limitPct">) {
  const { year } = option.pictures;
  const above = year.meanRhPct.filter((pct) => pct > limitPct).length;
  const firstDays = MONTH_NAMES.map((name, month) => ({
    step: [0, 31, 59, 90, 120, 151, 181, 212, 243, 273, 304, 334][month] ?? 0,
    text: name.slice(0, 1),
  }));
  return (
    <ChartFigure
      title={`The year, day by day: ${option.name}`}
      geometryAt={(width) =>
        forecastHumidity({
          width,
          limitPct,
          meanPct: year.meanRhPct,
          highestPct: year.highestRhPct,
          runShare: year.runHours.map((hours) => hours / 24),
          ticks: firstDays,
          stepName: "Day",
          steps: year.meanRhPct.map((_, day) => dayOfYearText(day * 24)),
          words: `The mean of a day is above ${limitPct} % on ${above} of ${year.meanRhPct.length} days. Line: mean of the day; shade: up to its wettest hour.`,
        })
      }
      empty="No day has been run yet."
    />
  );
}
