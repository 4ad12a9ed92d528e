import type { LogContext, LogSamples } from "@/lib/engineering/logs";

/*
 * A sound house with an odd story: its own physics (Magnus formula, one node of heat and one of moisture, a minute at a time) and its own
 * chance. It shares nothing with the analyser but the shape of a log. All numbers are invented.
 */
export type Story = {
  readonly firstDay: number;
  readonly days: number;
  /** Mean outdoor temperature and dew point of a day, °F. */
  readonly weather: (day: number) => { readonly dryF: number; readonly dewF: number };
  readonly setpointF?: (day: number, hour: number) => number;
  /** Moisture made inside, gr/lb a minute. */
  readonly inside?: (day: number) => number;
  /** Air exchanged, shares a minute. */
  readonly exchange?: (day: number, hour: number) => number;
  readonly hasPower?: (day: number, hour: number) => boolean;
  /** The unit heats instead of cooling. */
  readonly heats?: boolean;
  /** What the sensor makes of the room's air. */
  readonly sensor?: (day: number, hour: number, room: Air) => Air;
  /** What the logger writes of a reading. */
  readonly written?: (value: number) => number;
};
type Air = { readonly f: number; readonly rh: number };

const STEP_MIN = 5;
const DESIGN_F = 95;
const LOSS = 480;
const GAINS = 5_500;
const HIGH = 17_500;

const celsius = (f: number) => (f - 32) / 1.8;
/** Magnus, hPa. */
const saturation = (f: number) => 6.112 * Math.exp((17.62 * celsius(f)) / (243.12 + celsius(f)));
const grains = (dewF: number) => (7_000 * 0.622 * saturation(dewF)) / (1_013 - saturation(dewF));
export const humidityAt = (f: number, moisture: number) => {
  const ratio = moisture / 7_000;
  return Math.min(99, (100 * ((ratio * 1_013) / (0.622 + ratio))) / saturation(f));
};
export const moistureOf = ({ f, rh }: Air) => {
  const vapour = (rh / 100) * saturation(f);
  return (7_000 * 0.622 * vapour) / (1_013 - vapour);
};

/** Repeatable numbers between two others. */
export function chance(seed: number) {
  let state = seed;
  return (low: number, high: number) => {
    state = (state * 48_271) % 2_147_483_647;
    return low + ((high - low) * state) / 2_147_483_647;
  };
}

export function oddHouse(
  story: Story,
  seed: number,
): { readonly samples: LogSamples; readonly context: LogContext } {
  const between = chance(7_919 * seed + 104_729);
  between(0, 1);
  const count = (story.days * 1_440) / STEP_MIN;
  const column = () => new Float64Array(count);
  const [indoorF, indoorRhPct, outdoorF, outdoorRhPct, setpointF] = [
    column(),
    column(),
    column(),
    column(),
    column(),
  ];
  const [first, second, fan] = [column(), column(), column()];
  const written = story.written ?? ((value: number) => Math.round(value * 10) / 10);
  const stages = [HIGH * 0.68, HIGH];
  let [room, moisture, stage, ran] = [story.heats ? 69 : 75.3, story.heats ? 35 : 64, 0, 9];
  for (let at = 0; at < count; at++) {
    const day = Math.floor((at * STEP_MIN) / 1_440);
    const hour = ((at * STEP_MIN) / 60) % 24;
    const { dryF, dewF } = story.weather(day);
    const out = dryF + 9 * Math.cos(((hour - 15.5) / 24) * 2 * Math.PI) + between(-0.2, 0.2);
    const dew = Math.min(dewF, out - 1);
    const set = story.setpointF?.(day, hour) ?? (story.heats ? 69 : 75);
    const exchange = story.exchange?.(day, hour) ?? 0.0005;
    const power = story.hasPower?.(day, hour) ?? true;
    for (let minute = 0; minute < STEP_MIN; minute++) {
      const above = story.heats ? set - room : room - set;
      ran++;
      if (!power) stage = 0;
      else if (stage === 0 && above >= 1.2 && ran >= 6) [stage, ran] = [1, 0];
      else if (stage > 0 && above <= -0.1 && ran >= 14) [stage, ran] = [0, 0];
      else if (stage === 1 && above >= 2.8 && ran >= 8) stage = 2;
      else if (stage === 2 && above < 0.7) stage = 1;
      const made = stage === 0 ? 0 : (stages[stage - 1] ?? 0);
      const sun = Math.max(0, Math.sin(((hour - 7) / 13) * Math.PI)) * 0.9;
      const air = (exchange - 0.0005) * 60 * 900;
      room +=
        ((LOSS + air) * (out - room) + GAINS * (0.55 + sun) + (story.heats ? 1.2 * made : -made)) /
        60 /
        3_400;
      const take =
        story.heats || stage === 0
          ? 0
          : (made / 20_000) * Math.max(0, (moisture - 46) / 20) * (ran < 6 ? ran / 6 : 1);
      moisture += (story.inside?.(day) ?? 0.019) + exchange * (grains(dew) - moisture) - take * 0.2;
      if (stage > 0) first[at] = (first[at] ?? 0) + 1 / STEP_MIN;
      if (stage === 2) second[at] = (second[at] ?? 0) + 1 / STEP_MIN;
      if (stage > 0) fan[at] = (fan[at] ?? 0) + 1 / STEP_MIN;
    }
    const air = { f: room, rh: humidityAt(room, moisture) + between(-0.2, 0.2) };
    const seen = story.sensor?.(day, hour, air) ?? air;
    indoorF[at] = written(seen.f);
    indoorRhPct[at] = written(Math.min(99.9, seen.rh));
    outdoorF[at] = out;
    outdoorRhPct[at] = Math.min(100, (100 * saturation(dew)) / saturation(out));
    setpointF[at] = set;
  }
  const whole = (shares: Float64Array) => shares.map((share) => Math.min(1, share));
  return {
    samples: {
      timeMs: Float64Array.from({ length: count }, (_, at) => story.firstDay + at * STEP_MIN * 60_000),
      utcOffsetMin: new Int16Array(count),
      intervalMin: STEP_MIN,
      channels: {
        indoorF,
        indoorRhPct,
        outdoorF,
        outdoorRhPct,
        setpointF,
        firstStageShare: whole(first),
        secondStageShare: whole(second),
        fanShare: whole(fan),
      },
    },
    context: {
      humidityLimitPct: 60,
      elevationFt: 0,
      deliveredSensibleBtuhByStage: stages,
      design: { outdoorF: DESIGN_F, sensibleBtuh: LOSS * (DESIGN_F - 75) + GAINS * 1.3 },
    },
  };
}
