import type { LogSamples } from "@/lib/engineering/logs";
import { type LogSeries, logSeries } from "@/lib/engineering/logs/log-series";
import type { HouseLog, YearInput } from "@/lib/engineering/simulation";
import { systemOnLog } from "@/lib/engineering/simulation/system-on-log";
import { type YearPlan, yearPlan } from "@/lib/engineering/simulation/year-plan";
import { hourOfYear, type LogWeather, logWeather } from "./log-weather";

/*
 * A house's log as a house can be fitted to it: what the system took out follows from how long each stage ran, sun and wind from the
 * season, everything else was measured.
 */

export type HouseLogAnswer =
  | {
      readonly ok: true;
      readonly log: HouseLog;
      /** Instant of each sample of `log`. */
      readonly timeMs: Float64Array;
      readonly weather: LogWeather;
      /** What had to be assumed or left out, in sentences. */
      readonly notes: readonly string[];
    }
  /** What the log lacks, each as one sentence. */
  | { readonly ok: false; readonly missing: readonly string[] };

/** Longer logs count with their last days: the house of today, and an answer while one waits. */
const MOST_DAYS = 60;
const DAY_MS = 86_400_000;
/** The rooms' balances are told between these, °F. */
const COLDEST_F = 45;
const HOTTEST_F = 115;

/**
 * Turns a log into what `fitHouseToLog` takes.
 *
 * @param samples - As `analyzeLog` takes them.
 * @param input - The house as assumed with the job's system as set; its weather gives wind and sun.
 * @param elevationFt - Height of the house, ft.
 */
export function houseLogOf(samples: LogSamples, input: YearInput, elevationFt: number): HouseLogAnswer {
  const missing = missingColumns(samples);
  if (missing.length > 0) return { ok: false, missing };
  const weather = logWeather(samples, input.weather, elevationFt);
  if (weather === null) return { ok: false, missing: ["The log has no outdoor readings."] };
  const plan = yearPlan({ ...input, weather: weather.weather });
  const series = logSeries(samples, elevationFt);
  const { kept, cold } = usable(series, plan, (series.timeMs.at(-1) ?? 0) - MOST_DAYS * DAY_MS);
  if (kept.length === 0) {
    return {
      ok: false,
      missing: ["No sample of the log has all readings in weather that asks for cooling."],
    };
  }
  const pick = (column: Float64Array | null, otherwise = 0): Float64Array =>
    Float64Array.from(kept, (place) => column?.[place] ?? otherwise);
  const startsAnew = Uint8Array.from(kept, (place, index) =>
    index === 0 || kept[index - 1] !== place - 1 || series.afterGap[place] === 1 ? 1 : 0,
  );
  const hourOf = Int32Array.from(kept, (place) => hourOfYear(series.timeMs[place] ?? 0, weather.weather));
  const ofHour = (column: Float64Array) => Float64Array.from(hourOf, (hour) => column[hour] ?? 0);
  const coolingShare = pick(series.coolingShare);
  const columns = {
    intervalMin: series.intervalMin,
    startsAnew,
    indoorF: pick(series.channel("indoorF")),
    indoorRatio: pick(series.indoorHumidityRatio),
    outdoorF: pick(series.channel("outdoorF")),
  };
  const fan = series.channel("fanShare");
  const effect = systemOnLog(plan, {
    ...columns,
    coolingShare,
    secondShare: pick(series.channel("secondStageShare")),
    fanShare: fan === null ? fanAsSet(plan, coolingShare, series.intervalMin) : pick(fan),
    auxiliaryShare: pick(series.channel("auxiliaryShare")),
  });
  const outdoorRatio = pick(series.outdoorHumidityRatio);
  const clockHour = Uint8Array.from(kept, (place) => series.localHour[place] ?? 0);
  return {
    ok: true,
    log: {
      ...columns,
      ...effect,
      pressurePsia: plan.pressurePsia,
      day: Int32Array.from(kept, (place) => series.localDay[place] ?? 0),
      clockHour,
      outdoorRatio,
      windMph: ofHour(plan.windMph),
      sunBtuh: ofHour(plan.sunBtuh),
      ventilationCfm: outdoorRatio.map((ratio, index) =>
        ratio > plan.pauseAboveRatio
          ? 0
          : plan.ventilationCfm * (plan.ventilationHour[clockHour[index] ?? 0] ?? 0),
      ),
    },
    timeMs: pick(series.timeMs),
    weather,
    notes: notesOf(series, plan, cold),
  };
}

function missingColumns({ channels }: LogSamples): readonly string[] {
  const needed = [
    [channels.indoorF, "The log has no indoor temperature."],
    [channels.indoorRhPct, "The log has no indoor humidity."],
    [channels.outdoorF, "The log has no outdoor temperature; import a weather station's file beside it."],
    [
      channels.outdoorRhPct ?? channels.outdoorDewPointF,
      "The log has no outdoor humidity or dew point; import a weather station's file beside it.",
    ],
    [
      channels.firstStageShare ?? channels.secondStageShare,
      "The log does not say how long the cooling stages ran, so what the system took out is not known.",
    ],
  ] as const;
  return needed.flatMap(([channel, sentence]) => (channel === undefined ? [sentence] : []));
}

/** Places of the samples that have everything and lie in weather that may ask for cooling, and how many were too cold. */
function usable(series: LogSeries, { system }: YearPlan, sinceMs: number) {
  const columns = [
    series.channel("indoorF"),
    series.indoorHumidityRatio,
    series.outdoorHumidityRatio,
    series.coolingShare,
  ];
  const [indoorF, outdoorF] = [series.channel("indoorF"), series.channel("outdoorF")];
  const kept: number[] = [];
  let cold = 0;
  for (let place = 0; place < series.length; place++) {
    const inF = indoorF?.[place] ?? Number.NaN;
    const outF = outdoorF?.[place] ?? Number.NaN;
    const whole = columns.every((column) => Number.isFinite(column?.[place] ?? Number.NaN));
    if (!whole || !(inF > COLDEST_F && inF < HOTTEST_F) || Number.isNaN(outF)) continue;
    if ((series.timeMs[place] ?? 0) < sinceMs) continue;
    if (outF < system.noCoolingBelowF) cold++;
    else kept.push(place);
  }
  return { kept, cold };
}

/** Without a fan column the fan runs as the thermostat is set. */
function fanAsSet({ settings }: YearPlan, coolingShare: Float64Array, intervalMin: number): Float64Array {
  const least =
    settings.fanBetweenCalls === "on"
      ? 1
      : settings.fanBetweenCalls === "off"
        ? 0
        : (settings.fanBetweenCallsMinPerH ?? 0) / 60;
  const runOn = settings.fanRunOnAfterCoolingS / 60 / intervalMin;
  return coolingShare.map((share, index) => {
    const stops = share < 1 && (share > 0 || (coolingShare[index - 1] ?? 0) === 1);
    return Math.min(1, Math.max(least, share + (stops ? runOn : 0)));
  });
}

function notesOf(series: LogSeries, plan: YearPlan, cold: number): readonly string[] {
  const notes = [
    "Wind and sun are not in a log: they are taken as usual for the hour and the season from the weather file.",
  ];
  if (series.channel("fanShare") === null)
    notes.push("The log does not say when the fan ran: it is taken to run as the thermostat is set.");
  if (plan.stages.length === 2 && series.channel("secondStageShare") === null)
    notes.push("The log does not tell the stages apart: all running time is taken as first stage.");
  if (plan.dehumidifier !== null)
    notes.push(
      "The log does not say when the dehumidifier ran: it is taken to follow the measured humidity.",
    );
  if (cold > 0) {
    const hours = Math.round((cold * series.intervalMin) / 60);
    notes.push(
      `${hours} h with the outdoors below ${plan.system.noCoolingBelowF} °F are left out: the log does not tell heating apart.`,
    );
  }
  return notes;
}
