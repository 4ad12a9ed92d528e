import { describe, expect, it } from "vitest";
import { moistAir, standardPressurePsia } from "@/lib/engineering/air";
import { ImpossibleStateError, OutOfRangeError } from "@/lib/engineering/errors";
import { analyzeLog, type LogContext, type LogSamples } from "@/lib/engineering/logs";
import { logAir } from "@/lib/engineering/logs/log-air";
import { context, madeLog, times } from "./made-log";

const SOURCE = "counting and arithmetic on small made logs, shown at each check [C]";
const HOUR_MS = 3_600_000;

describe(`humidity: ${SOURCE}`, () => {
  it("a reading at the limit is dry, a gap is neither", () => {
    const { humidity } = analyzeLog(madeLog({ indoorRhPct: [50, 55, 55.1, null, 60, 61] }), context);
    expect(humidity?.hours).toBeCloseTo(5 / 12, 12);
    expect(humidity?.dryHours).toBeCloseTo(2 / 12, 12);
    expect(humidity?.dryShare).toBeCloseTo(0.4, 12);
    expect(humidity?.share50To60).toBeCloseTo(0.8, 12);
    expect(humidity?.byHourOfDay[0]?.wetShare).toBeCloseTo(0.6, 12);
    expect(humidity?.meanDewPointF).toBeNull();
  });

  it("a gap in the readings and missing time both end a wet spell", () => {
    const samples = madeLog({ indoorRhPct: [60, 60, 60, null, 60, 60, 60, 60, 50, 60] });
    // Between the sixth and seventh sample an hour is missing.
    const timeMs = samples.timeMs.map((ms, index) => ms + (index >= 6 ? HOUR_MS : 0));
    const { humidity, period } = analyzeLog({ ...samples, timeMs }, context);
    expect(humidity?.longestWetSpell).toEqual({
      fromMs: timeMs[0],
      toMs: (timeMs[0] ?? 0) + 900_000,
      hours: 0.25,
    });
    expect(period.missingHours).toBeCloseTo(1, 9);
  });

  it("no wet spell is null", () => {
    expect(analyzeLog(madeLog({ indoorRhPct: [40, 41] }), context).humidity?.longestWetSpell).toBeNull();
  });

  it("hours of day are those of the house's clock", () => {
    const samples = madeLog({ indoorRhPct: [...times(12, 50), ...times(12, 60)] });
    const west = { ...samples, utcOffsetMin: new Int16Array(24).fill(-300) };
    const found = analyzeLog(west, context).humidity?.byHourOfDay;
    expect(found?.map(({ hour, meanRhPct, wetShare }) => [hour, meanRhPct, wetShare])).toEqual([
      [19, 50, 0],
      [20, 60, 1],
    ]);
  });

  it("outdoor dew points fall into steps of 5 °F", () => {
    // Saturated air: the dew point is the temperature. 64.9 → 60 to 65, 65.1 and 69 → 65 to 70.
    const { humidity } = analyzeLog(
      madeLog({ indoorRhPct: [50, 56, 58], outdoorF: [64.9, 65.1, 69], outdoorRhPct: [100, 100, 100] }),
      context,
    );
    expect(humidity?.byOutdoorDewPoint.map(({ fromF, toF, meanRhPct }) => [fromF, toF, meanRhPct])).toEqual([
      [60, 65, 50],
      [65, 70, 57],
    ]);
  });

  it("indoor minus outdoor moisture is that of moistAir", () => {
    const { humidity } = analyzeLog(
      madeLog({ indoorF: [75, 74], indoorRhPct: [50, 52], outdoorF: [85, 60], outdoorRhPct: [70, 40] }),
      { ...context, elevationFt: 5_000 },
    );
    const grains = (dryBulbF: number, relativeHumidityPct: number) =>
      moistAir({ dryBulbF, relativeHumidityPct, pressurePsia: 12.228 }).grainsPerLb;
    const expected = (grains(75, 50) - grains(85, 70) + grains(74, 52) - grains(60, 40)) / 2;
    // Standard pressure at 5,000 ft typed as 12.228 psia (ASHRAE table 1 [F]), three places: 0.05 gr/lb.
    expect(Math.abs((humidity?.overOutdoor?.meanGrainsPerLb ?? 0) - expected)).toBeLessThan(0.05);
    expect(humidity?.overOutdoor?.wetterShare).toBe(0.5);
  });

  it("quick moist air agrees with moistAir: 0.001 °F and a billionth of the humidity ratio", () => {
    const air = logAir(1_000);
    for (const dryBulbF of [-20, 10, 31, 33, 50, 75, 95, 120]) {
      for (const relativeHumidityPct of [5, 20, 50, 80, 100]) {
        const full = moistAir({ dryBulbF, relativeHumidityPct, pressurePsia: standardPressurePsia(1_000) });
        const vapour = air.vapourPsia(dryBulbF, relativeHumidityPct);
        expect(Math.abs(air.dewPointF(vapour) - full.dewPointF)).toBeLessThan(0.001);
        expect(Math.abs(air.humidityRatio(vapour) / full.humidityRatio - 1)).toBeLessThan(1e-9);
      }
    }
  });
});

describe(`running: ${SOURCE}`, () => {
  const running = (firstStageShare: (number | null)[], rest: Parameters<typeof madeLog>[0] = {}) => {
    const found = analyzeLog(madeLog({ firstStageShare, ...rest }), context).running;
    if (found === null) throw new Error("no running");
    return found;
  };

  it("a run from mid-interval to mid-interval: 0.4 + 1 + 1 + 0.6 intervals of 5 min = 15 min", () => {
    const found = running([0, 0.4, 1, 1, 0.6, 0, 0]);
    expect(found.starts).toBe(1);
    expect(found.runs).toMatchObject({ count: 1, meanMin: 15 });
    expect(found.duty).toBeCloseTo(3 / 7, 12);
    expect(found.coolingHours).toBeCloseTo(0.25, 12);
  });

  it("a pause inside one interval parts two runs", () => {
    // 5 + 5 + 1.5 min, pause of 2 min, 1.5 + 5 min.
    const found = running([0, 1, 1, 0.6, 1, 0]);
    expect(found.runs).toMatchObject({ count: 2, shortestMin: 6.5, longestMin: 11.5 });
    expect(found.rests?.meanMin).toBeCloseTo(2, 9);
  });

  it("a pause across two intervals is one pause: 0.5 + 0.4 intervals = 4.5 min", () => {
    const found = running([0, 1, 0.5, 0.6, 1, 0]);
    expect(found.runs?.count).toBe(2);
    expect(found.rests).toMatchObject({ count: 1 });
    expect(found.rests?.meanMin).toBeCloseTo(4.5, 9);
  });

  it("a run inside one interval", () => {
    expect(running([0, 0.5, 0, 0]).runs).toMatchObject({ count: 1, meanMin: 2.5 });
  });

  it("runs at the ends and beside gaps count as starts, their lengths as unknown", () => {
    const found = running([1, 1, 0, 1, null, 1, 0, 0.5, 0, 1]);
    expect(found.starts).toBe(5);
    expect(found.runs).toMatchObject({ count: 1, meanMin: 2.5 });
    // Known pauses: between the first and second run; between the third and fourth; before the last.
    expect(found.rests?.count).toBe(3);
  });

  it("length shares count whole runs: 5, 10 and 25 min", () => {
    const found = running([0, 1, 0, 1, 1, 0, 1, 1, 1, 1, 1, 0]);
    expect(found.runsShorterThan).toEqual([
      { minutes: 5, share: 0 },
      { minutes: 10, share: 1 / 3 },
      { minutes: 20, share: 2 / 3 },
      { minutes: 60, share: 1 },
    ]);
  });

  it("cycles an hour over hours with cooling: two starts in the first of two hours", () => {
    const found = running([0, 1, 1, 0, 0, 1, 1, 0, 0, 0, 0, 0, ...times(12, 0)]);
    expect(found.cyclesPerHour).toBe(2);
    expect(found.cyclesPerHourAtHalf).toBeNull();
  });

  it("at half running: 12 hours of 30 min on, 30 min off give one cycle an hour", () => {
    const hour = [...times(3, 0), ...times(6, 1), ...times(3, 0)];
    expect(running(times(12, hour).flat()).cyclesPerHourAtHalf).toBe(1);
  });

  it("second-stage share, when the first is counted on beside it and when not", () => {
    const nested = running([1, 1, 1, 0], { secondStageShare: [0, 1, 0.5, 0] });
    expect(nested.coolingHours).toBeCloseTo(0.25, 12);
    expect(nested.secondStageShare).toBeCloseTo(0.5, 12);
    const apart = running([1, 0, 0.5, 0], { secondStageShare: [0, 1, 0.5, 0] });
    expect(apart.coolingHours).toBeCloseTo(0.25, 12);
    expect(apart.secondStageShare).toBeCloseTo(0.5, 12);
  });

  it("fan without cooling, and auxiliary heat", () => {
    const found = running([1, 0.5, 0, 0], { fanShare: [1, 1, 1, 0], auxiliaryShare: [0, 0, 0, 1] });
    expect(found.fanHours).toBeCloseTo(0.25, 12);
    expect(found.fanOnlyHours).toBeCloseTo(0.125, 12);
    expect(found.auxiliaryHours).toBeCloseTo(1 / 12, 12);
  });

  it("moisture after a run, by what the fan did", () => {
    // At 75 °F from 50 to 52 % in 15 min; saturation at 75 °F is 0.43 psia, so about 2.6 gr/lb.
    const moistureAfter = (fan: number) =>
      running([0, 1, 0, 0, 0, 0], {
        fanShare: [0, 1, fan, fan, fan, fan],
        indoorF: times(6, 75),
        indoorRhPct: [50, 50, 50.7, 51.4, 52, 52],
      }).afterRun;
    expect(moistureAfter(1).fanOff).toBeNull();
    expect(moistureAfter(1).fanOn?.runs).toBe(1);
    expect(moistureAfter(1).fanOn?.meanRiseGrainsPerLb ?? 0).toBeCloseTo(2.6, 1);
    expect(moistureAfter(0).fanOn).toBeNull();
    expect(moistureAfter(0).fanOff?.runs).toBe(1);
  });
});

describe(`load line: ${SOURCE}`, () => {
  /** Days of 5-minute samples with a steady outdoor temperature and the duty of a 600 Btu/h·°F house. */
  const days = (temperatures: readonly number[], loadOf: (outdoorF: number) => number) => {
    const duty = (outdoorF: number) => Math.max(0, loadOf(outdoorF)) / 24_000;
    return madeLog({
      outdoorF: temperatures.flatMap((outdoorF) => times(288, outdoorF)),
      firstStageShare: temperatures.flatMap((outdoorF) => times(288, duty(outdoorF))),
    });
  };
  const known: LogContext = {
    ...context,
    deliveredSensibleBtuhByStage: [24_000],
    design: { outdoorF: 95, sensibleBtuh: 20_000 },
  };
  const temperatures = [72, 75, 78, 80, 82, 84, 86, 88, 90];

  it("finds slope 600, zero at 68 °F and the design day of a house made so", () => {
    const line = analyzeLog(
      days(temperatures, (outdoorF) => 600 * (outdoorF - 68)),
      known,
    ).loadLine;
    expect(line?.slopeBtuhPerF).toBeCloseTo(600, 6);
    expect(line?.zeroLoadF).toBeCloseTo(68, 6);
    // 600 · (95 − 68) = 16,200; 16,200/24,000 = 0.675; 1/0.675 = 1.4815; 16,200/20,000 = 0.81
    expect(line?.atDesign?.sensibleBtuh).toBeCloseTo(16_200, 4);
    expect(line?.atDesign?.duty).toBeCloseTo(0.675, 9);
    expect(line?.atDesign?.oversizeRatio).toBeCloseTo(1.48148, 4);
    expect(line?.atDesign?.overLoadSummary).toBeCloseTo(0.81, 9);
    expect(line?.atDesign?.beyondLogF).toBeCloseTo(5, 9);
  });

  it("holds the peak hour, not the day's mean, against the load summary", () => {
    // Outdoors a 20 °F swing with its peak in the hour from 15:00. The house takes 600 · (T − 68), and 5,000 Btu/h of sun from
    // 16:00 to 18:00. On a day that reaches 95 °F: 600 · (outdoors from 16:00 − 68) + 5,000, and outdoors from 16:00 is
    // 10 · (1 − cos 15°) = 0.3407 °F below the peak: 600 · 26.6593 + 5,000 = 20,995.6 Btu/h.
    // The days' mean line at 95 °F would say 600 · 27 + 5,000 · 2/24 = 16,616.7: a fifth too low.
    const hourOf = (index: number) => Math.floor((index % 288) / 12);
    const swing = (hour: number) => 10 * Math.cos(((hour - 15) * 2 * Math.PI) / 24);
    const outdoorF = [80, 78, 83, 76, 81, 84, 77, 82, 85, 79].flatMap((mean) =>
      Array.from({ length: 288 }, (_, index) => mean + swing(hourOf(index))),
    );
    const sun = (index: number) => (hourOf(index) === 16 || hourOf(index) === 17 ? 5_000 : 0);
    const load = outdoorF.map((out, index) => Math.max(0, 600 * (out - 68)) + sun(index));
    const line = analyzeLog(madeLog({ outdoorF, firstStageShare: load.map((btuh) => btuh / 30_000) }), {
      ...known,
      deliveredSensibleBtuhByStage: [30_000],
      design: { outdoorF: 95, sensibleBtuh: 21_000 },
    }).loadLine;
    expect(line?.peakHour).toMatchObject({ hour: 16, dayCount: 10, fullShare: 0 });
    expect(line?.peakHour?.slopeBtuhPerF).toBeCloseTo(600, 6);
    expect(line?.atDesign?.sensibleBtuh).toBeCloseTo(20_995.6, 0);
    expect(line?.atDesign?.low).toBeCloseTo(20_995.6, 0);
    expect(line?.atDesign?.overLoadSummary).toBeCloseTo(20_995.6 / 21_000, 4);
    // The hottest day reaches 85 + 10 = 95 °F.
    expect(line?.atDesign?.beyondLogF).toBe(0);
  });

  it("says on how many days the stage ran the peak hour through, when more may have been wanted", () => {
    const capped = (outdoorF: number) => Math.min(12_000, 600 * (outdoorF - 68));
    // 600 · (88 − 68) = 12,000: the days of 88 and 90 °F run through, of nine.
    const full = analyzeLog(
      madeLog({
        outdoorF: temperatures.flatMap((outdoorF) => times(288, outdoorF)),
        firstStageShare: temperatures.flatMap((outdoorF) => times(288, capped(outdoorF) / 12_000)),
      }),
      { ...known, deliveredSensibleBtuhByStage: [12_000] },
    );
    expect(full.loadLine?.peakHour?.fullShare).toBeCloseTo(2 / 9, 12);
  });

  it("one odd day does not move it", () => {
    const odd = (outdoorF: number) => (outdoorF === 82 ? 20_000 : 600 * (outdoorF - 68));
    const line = analyzeLog(days(temperatures, odd), known).loadLine;
    expect(Math.abs((line?.slopeBtuhPerF ?? 0) / 600 - 1)).toBeLessThan(0.05);
    expect(line?.slopeLow ?? 0).toBeLessThanOrEqual(600);
    expect(line?.slopeHigh ?? 0).toBeGreaterThanOrEqual(600 - 1e-9);
  });

  it("second-stage time counts its own capacity, whichever way the thermostat counts", () => {
    // 27,000 Btu/h · share = 600 · (T − 68).
    const share = temperatures.flatMap((outdoorF) => times(288, (600 * (outdoorF - 68)) / 27_000));
    const two = { ...known, deliveredSensibleBtuhByStage: [18_000, 27_000] };
    for (const firstStageShare of [share, times(288 * 9, 0)]) {
      const outdoorF = temperatures.flatMap((value) => times(288, value));
      const line = analyzeLog(madeLog({ outdoorF, firstStageShare, secondStageShare: share }), two).loadLine;
      expect(line?.slopeBtuhPerF).toBeCloseTo(600, 6);
      expect(line?.zeroLoadF).toBeCloseTo(68, 6);
    }
  });

  it("says by how much it moved: the last third of 15 days at 600 · (T − 68) + 3,000", () => {
    const fifteen = times(3, [72, 78, 82, 86, 90]).flat();
    const load = (outdoorF: number, day: number) => 600 * (outdoorF - 68) + (day >= 10 ? 3_000 : 0);
    const line = analyzeLog(
      madeLog({
        outdoorF: fifteen.flatMap((outdoorF) => times(288, outdoorF)),
        firstStageShare: fifteen.flatMap((outdoorF, day) => times(288, load(outdoorF, day) / 24_000)),
      }),
      known,
    ).loadLine;
    // Mean of T − 68 is 13.6: 8,160 Btu/h, and 1,000 more by the third moved: 3,000 / 9,160 = 0.3275.
    expect(line?.slopeBtuhPerF).toBeCloseTo(600, 6);
    expect(line?.movedBy).toBeCloseTo(0.32751, 4);
    expect(
      analyzeLog(
        days(temperatures, (outdoorF) => 600 * (outdoorF - 68)),
        known,
      ).loadLine?.movedBy,
    ).toBeNull();
  });

  it("is not drawn from too few days, too little spread, or without capacity; nor stretched 10 °F beyond", () => {
    const house = (outdoorF: number) => 600 * (outdoorF - 68);
    expect(analyzeLog(days(temperatures.slice(0, 7), house), known).loadLine).toBeNull();
    expect(analyzeLog(days([80, 81, 82, 83, 84, 85, 86, 87], house), known).loadLine).toBeNull();
    expect(analyzeLog(days(temperatures, house), context).loadLine).toBeNull();
    const far = { ...known, design: { outdoorF: 101, sensibleBtuh: 20_000 } };
    expect(analyzeLog(days(temperatures, house), far).loadLine?.atDesign).toBeNull();
  });
});

describe(`sensors and sources: ${SOURCE}`, () => {
  it("the longest stretch of one reading, not across a gap", () => {
    const { sensors } = analyzeLog(madeLog({ indoorRhPct: [50, 50, null, 50, 50, 50, 51] }), context);
    expect(sensors.longestStill).toMatchObject([{ channel: "indoorRhPct", hours: 0.25, value: 50 }]);
  });

  it("setpoint changes a day: 74 → 70 → 74 and back to 74.5 in a day of samples", () => {
    const setpointF = [...times(100, 74), ...times(88, 70), ...times(50, 74), ...times(50, 74.5)];
    expect(analyzeLog(madeLog({ setpointF }), context).setpoints).toEqual({
      medianF: 74,
      lowestF: 70,
      highestF: 74.5,
      // Without outdoor readings every reading counts.
      warmMedianF: 74,
      changesPerDay: 2,
      bigDropsPerDay: 1,
    });
  });

  it("two sensors' mean difference", () => {
    const { sensors } = analyzeLog(
      madeLog({ indoorF: [70, 71, null], secondIndoorF: [72, 72, 72], indoorRhPct: [50, 50, 50] }),
      context,
    );
    expect(sensors.secondMinusFirstF).toBeCloseTo(1.5, 12);
    expect(sensors.secondMinusFirstRhPct).toBeNull();
  });

  it("wet hours without a call in mild weather, and at night", () => {
    const { moisture } = analyzeLog(
      madeLog({
        indoorRhPct: [60, 60, 60, 60],
        outdoorF: [65, 65, 85, 65],
        firstStageShare: [0, 1, 0, 0],
      }),
      context,
    );
    expect(moisture?.mildIdleWetHours).toBeCloseTo(2 / 12, 12);
    expect(moisture?.mildIdleShareOfWet).toBe(0.5);
    expect(moisture?.nightShareOfWet).toBe(1);
  });

  it("indoor moisture that follows outdoors by half is found to", () => {
    const outdoorRhPct = Array.from({ length: 600 }, (_, index) => 40 + 30 * Math.sin(index / 20));
    const air = logAir(0);
    const indoorRhPct = outdoorRhPct.map((pct) => {
      const outdoor = air.humidityRatio(air.vapourPsia(75, pct));
      const target = 0.004 + 0.5 * outdoor;
      // W → vapour pressure → RH at 75 °F.
      const vapour = (14.696 * target) / (0.621945 + target);
      return (100 * vapour) / air.vapourPsia(75, 100);
    });
    const { moisture } = analyzeLog(
      madeLog({
        indoorF: times(600, 75),
        indoorRhPct,
        outdoorF: times(600, 75),
        outdoorRhPct,
        firstStageShare: times(600, 0),
      }),
      context,
    );
    expect(moisture?.followsOutdoors?.slope).toBeCloseTo(0.5, 6);
    expect(moisture?.followsOutdoors?.r).toBeCloseTo(1, 9);
    expect(moisture?.followsOutdoors?.hours).toBeCloseTo(50, 9);
  });
});

describe("refusals", () => {
  const good = madeLog({ indoorF: [70, 71] });
  it.each<[string, LogSamples, Partial<LogContext>, typeof OutOfRangeError | typeof ImpossibleStateError]>([
    ["no samples", madeLog({ indoorF: [] }), {}, ImpossibleStateError],
    ["time that runs back", { ...good, timeMs: Float64Array.of(1_000, 0) }, {}, ImpossibleStateError],
    ["the same time twice", { ...good, timeMs: Float64Array.of(0, 0) }, {}, ImpossibleStateError],
    [
      "columns of unequal length",
      { ...good, channels: { indoorF: Float64Array.of(70) } },
      {},
      ImpossibleStateError,
    ],
    ["°C taken for °F", madeLog({ indoorF: [21, 21] }), {}, OutOfRangeError],
    ["humidity above 100 %", madeLog({ indoorRhPct: [101, 50] }), {}, OutOfRangeError],
    ["hourly means of a day", { ...good, intervalMin: 1_440 }, {}, OutOfRangeError],
    ["a limit of 0 %", good, { humidityLimitPct: 0 }, OutOfRangeError],
  ])("%s", (_, samples, change, type) => {
    expect(() => analyzeLog(samples, { ...context, ...change })).toThrow(type);
  });
});
