import type { LogContext, LogSamples } from "@/lib/engineering/logs";

/*
 * A tiny house that makes logs with one planted cause. Own physics (Magnus formula, one node of heat and one of moisture, a
 * minute at a time) and own chance: it shares nothing with the analyser but the shape of a log. All numbers are invented.
 */
export type Fault =
  | "none"
  | "short-cycles"
  | "fan-between-calls"
  | "second-stage-eager"
  | "mild-wet-weather"
  | "outdoor-moisture"
  | "setpoint-habits"
  | "airflow-too-high"
  | "lost-capacity"
  | "sensor-error";

const DAYS = 28;
const STEP_MIN = 5;
const DESIGN_F = 95;
/** Sensible load, Btu/h, of the house: per °F outdoors over indoors, and what people, things and sun give on average. */
const LOSS = 480;
const GAINS = 5_500;

const celsius = (f: number) => (f - 32) / 1.8;
/** Magnus, hPa. */
const saturation = (f: number) => 6.112 * Math.exp((17.62 * celsius(f)) / (243.12 + celsius(f)));
/** gr/lb from a dew point. */
const grains = (dewPointF: number) =>
  (7_000 * 0.622 * saturation(dewPointF)) / (1_013 - saturation(dewPointF));
const humidity = (f: number, moisture: number) => {
  const ratio = moisture / 7_000;
  return (100 * ((ratio * 1_013) / (0.622 + ratio))) / saturation(f);
};

function chance(seed: number) {
  let state = seed * 2_654_435_761 + 12_345;
  const next = () => {
    state = (Math.imul(state ^ (state >>> 15), 2_246_822_519) + 3_266_489_917) | 0;
    return ((state ^ (state >>> 13)) >>> 0) / 4_294_967_296;
  };
  for (let warm = 0; warm < 8; warm++) next();
  return { between: (low: number, high: number) => low + (high - low) * next() };
}

/** A log of four summer weeks with one fault built in. */
export function plantedHouse(
  fault: Fault,
  seed: number,
): { readonly samples: LogSamples; readonly context: LogContext } {
  const { between } = chance(seed * 97 + fault.length);
  const size = fault === "short-cycles" ? between(2.4, 3) : between(1.05, 1.25);
  const designLoad = LOSS * (DESIGN_F - 75) + GAINS * 1.3;
  const high = designLoad * size;
  const stages = [high * 0.68, high];
  const band = fault === "short-cycles" ? 0.35 : between(1, 1.4);
  const leastRun = fault === "short-cycles" ? 4 : 14;
  const secondAt = fault === "second-stage-eager" ? band + 0.02 : band + 1.6;
  // gr/lb a minute the running coil takes per Btu/h, falling with too much air.
  const drying = fault === "airflow-too-high" ? between(0.26, 0.34) : between(0.95, 1.1);
  const air = fault === "outdoor-moisture" ? between(0.0035, 0.0042) : between(0.0004, 0.0006);
  const mild = fault === "mild-wet-weather";
  const inside =
    fault === "mild-wet-weather"
      ? between(0.012, 0.016)
      : fault === "airflow-too-high"
        ? between(0.032, 0.04)
        : between(0.016, 0.022);
  const count = (DAYS * 1_440) / STEP_MIN;
  const column = () => new Float64Array(count);
  const [indoorF, indoorRhPct, outdoorF, outdoorRhPct, setpointF] = [
    column(),
    column(),
    column(),
    column(),
    column(),
  ];
  const [first, second, fan] = [column(), column(), column()];
  let [room, moisture, stage, ran, coil, dayF, dewF] = [75.3, 64, 0, 0, 0, 0, 0];
  let stuckRh = 0;
  for (let at = 0; at < count; at++) {
    const day = Math.floor((at * STEP_MIN) / 1_440);
    if ((at * STEP_MIN) % 1_440 === 0) {
      dayF = (mild ? 65 : 82) + between(mild ? -3 : -7, mild ? 4 : 7);
      dewF = (mild ? 63 : 71) + between(-3, 3);
    }
    const hour = ((at * STEP_MIN) / 60) % 24;
    const swing = Math.cos(((hour - 15.5) / 24) * 2 * Math.PI);
    const out = dayF + (mild ? 6 : 9) * swing;
    const dew = Math.min(dewF, out - 1);
    const set = fault === "setpoint-habits" ? (hour >= 9 && hour < 17 ? 79 : 73) : 75;
    const worn = fault === "lost-capacity" ? 1 - 0.45 * Math.min(1, Math.max(0, (day - 8) / 12)) : 1;
    for (let minute = 0; minute < STEP_MIN; minute++) {
      const above = room - set;
      ran++;
      if (stage === 0 && above >= band && ran >= 6) [stage, ran] = [1, 0];
      else if (stage > 0 && above <= -0.1 && ran >= leastRun) [stage, ran] = [0, 0];
      else if (stage === 1 && above >= secondAt && (fault === "second-stage-eager" || ran >= 8)) stage = 2;
      else if (stage === 2 && fault !== "second-stage-eager" && above < band * 0.6) stage = 1;
      if (fault === "second-stage-eager" && stage === 1 && ran >= 2) stage = 2;
      const cooling = stage === 0 ? 0 : (stages[stage - 1] ?? 0) * worn;
      const sun = Math.max(0, Math.sin(((hour - 7) / 13) * Math.PI)) * 0.9;
      const heat = LOSS * (out - room) + (mild ? 0.62 : 1) * GAINS * (0.55 + sun) - cooling;
      room += heat / 60 / 3_400;
      const take =
        cooling > 0
          ? (cooling / 20_000) * drying * Math.max(0, (moisture - 46) / 20) * (ran < 6 ? ran / 6 : 1)
          : 0;
      coil = Math.min(14, coil + take);
      const blows = stage > 0 || fault === "fan-between-calls";
      const back = stage === 0 && blows ? coil * 0.07 : 0;
      coil = Math.max(0, coil - back - (stage === 0 ? coil * 0.02 : 0));
      moisture += inside + air * (grains(dew) - moisture) - take * 0.33 + back * 0.33;
      if (stage > 0) first[at] = (first[at] ?? 0) + 1 / STEP_MIN;
      if (stage === 2) second[at] = (second[at] ?? 0) + 1 / STEP_MIN;
      if (blows) fan[at] = (fan[at] ?? 0) + 1 / STEP_MIN;
    }
    const rh = Math.min(99, humidity(room, moisture)) + between(-0.2, 0.2);
    if (day < 6) stuckRh = rh;
    indoorF[at] = Math.round(room * 10) / 10;
    indoorRhPct[at] = Math.round((fault === "sensor-error" && day >= 6 ? stuckRh : rh) * 10) / 10;
    outdoorF[at] = out;
    outdoorRhPct[at] = Math.min(100, (100 * saturation(dew)) / saturation(out));
    setpointF[at] = set;
  }
  return {
    samples: {
      timeMs: Float64Array.from({ length: count }, (_, at) => Date.UTC(2025, 6, 1) + at * STEP_MIN * 60_000),
      utcOffsetMin: new Int16Array(count),
      intervalMin: STEP_MIN,
      channels: {
        indoorF,
        indoorRhPct,
        outdoorF,
        outdoorRhPct,
        setpointF,
        firstStageShare: first.map((share) => Math.min(1, share)),
        secondStageShare: second.map((share) => Math.min(1, share)),
        fanShare: fan.map((share) => Math.min(1, share)),
      },
    },
    context: {
      humidityLimitPct: 60,
      elevationFt: 0,
      deliveredSensibleBtuhByStage: stages,
      design: { outdoorF: DESIGN_F, sensibleBtuh: designLoad },
    },
  };
}
