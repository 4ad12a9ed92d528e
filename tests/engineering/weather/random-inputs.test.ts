import fc from "fast-check";
import { expect } from "vitest";
import * as weather from "@/lib/engineering/weather";
import {
  everyFunctionTried,
  lawful,
  RANDOM_RUNS,
  randomTest,
  runs,
  tried,
} from "../../support/random-inputs";
import { houston, withCell } from "./weather-files";

const {
  designConditions,
  irradianceFacing,
  parseEpw,
  sunDirection,
  sunPosition,
  surfaceFacing,
  tiltedIrradiance,
  WEATHER_CHANNELS,
} = tried(weather, ["parseEpw"]);

randomTest("any text is read or refused", () => {
  const line = fc.array(fc.oneof(fc.string(), fc.double().map(String), fc.constant("99.9")), {
    maxLength: 40,
  });
  fc.assert(
    fc.property(fc.array(line, { maxLength: 20 }), fc.boolean(), (rows, withHeader) => {
      const text = rows.map((cells) => cells.join(",")).join("\n");
      lawful(() => parseEpw(withHeader ? `${houston.slice(0, 4_000)}${text}` : text));
    }),
    runs(71),
  );
});

randomTest("a real file with wild cells gives finite values, listed gaps, or a refusal", () => {
  // A whole year a run: fewer runs, so that the folder stays quick.
  const cell = fc.record({
    row: fc.integer({ min: 1, max: 8_768 }),
    column: fc.integer({ min: 1, max: 24 }),
    value: fc.oneof(
      fc.constantFrom("99.9", "999", "9999", "999999", "", "NaN", "-1", "1e400", "15", "20"),
      fc.double({ min: -50, max: 50, noNaN: true }).map(String),
    ),
  });
  let read = 0;
  fc.assert(
    fc.property(fc.array(cell, { minLength: 1, maxLength: 2 }), (cells) => {
      const text = cells.reduce(
        (whole, { row, column, value }) => withCell(whole, row, column, value),
        houston,
      );
      const weather = lawful(() => parseEpw(text));
      if (weather === null) return;
      read++;
      const listed = new Set(weather.gaps.map(({ channel, hourIndex }) => `${channel} ${hourIndex}`));
      for (const channel of WEATHER_CHANNELS) {
        for (const [hour, value] of weather[channel].entries()) {
          if (!Number.isFinite(value)) expect(listed.has(`${channel} ${hour}`)).toBe(true);
        }
      }
      const { cooling, dehumidification, heating } = designConditions(weather);
      const numbers = [
        ...Object.values(cooling),
        ...Object.values(dehumidification),
        ...Object.values(heating),
      ];
      expect(numbers.every(Number.isFinite)).toBe(true);
    }),
    { seed: 72, numRuns: Math.ceil(RANDOM_RUNS / 200) },
  );
  expect(read).toBeGreaterThan(0);
});

randomTest("design conditions of a year with wild hours: finite, or refused", () => {
  // Every 17th hour: percentiles of a year in a seventeenth of the time. Whole years are in the test above.
  const year = everyHour(parseEpw(houston), 17);
  const wildHours = fc.array(
    fc.record({
      channel: fc.constantFrom("dryBulbF" as const, "dewPointF" as const, "pressurePsia" as const),
      from: fc.integer({ min: 0, max: year.hourCount - 1 }),
      hours: fc.integer({ min: 1, max: 24 }),
      value: fc.oneof(fc.constant(Number.NaN), fc.double({ min: -40, max: 130, noNaN: true })),
    }),
    { minLength: 1, maxLength: 3 },
  );
  fc.assert(
    fc.property(wildHours, (changes) => {
      const changed = {
        ...year,
        dryBulbF: year.dryBulbF.slice(),
        dewPointF: year.dewPointF.slice(),
        pressurePsia: year.pressurePsia.slice(),
      };
      for (const { channel, from, hours, value } of changes) changed[channel].fill(value, from, from + hours);
      const found = lawful(() => designConditions(changed));
      if (found === null) return;
      expect(found.cooling.dryBulbF).toBeGreaterThanOrEqual(found.heating.dryBulbF);
    }),
    runs(73, 1 / 4),
  );
});

/** Every nth hour of a year. */
function everyHour(year: weather.Weather, nth: number): weather.Weather {
  const kept = Object.entries(year).map(([key, value]) => [
    key,
    ArrayBuffer.isView(value) ? (value as Float64Array).filter((_, hour) => hour % nth === 0) : value,
  ]);
  return { ...Object.fromEntries(kept), hourCount: Math.ceil(year.hourCount / nth) };
}

randomTest("sun and surfaces: within the sphere, never more than all light together", () => {
  const number = fc.oneof(
    { weight: 30, arbitrary: fc.double({ min: -80, max: 80, noNaN: true }) },
    fc.double(),
  );
  const light = fc.oneof(
    { weight: 30, arbitrary: fc.double({ min: 0, max: 400, noNaN: true }) },
    fc.double(),
  );
  fc.assert(
    fc.property(
      fc.array(number, { minLength: 5, maxLength: 5 }),
      light,
      light,
      light,
      (angles, dni, dhi, ghi) => {
        const [days = 0, latitudeDeg = 0, longitudeDeg = 0, tiltDeg = 0, azimuthDeg = 0] = angles;
        const sun = lawful(() => sunPosition({ daysSinceJ2000: days * 100, latitudeDeg, longitudeDeg }));
        if (sun === null) return;
        expect(Math.abs(sun.elevationDeg)).toBeLessThanOrEqual(90);
        const found = lawful(() =>
          tiltedIrradiance({
            directNormal: dni,
            diffuseHorizontal: dhi,
            globalHorizontal: ghi,
            groundReflectance: 0.2,
            tilt: { tiltDeg: Math.abs(tiltDeg), azimuthDeg: Math.abs(azimuthDeg) },
            sun,
          }),
        );
        if (found !== null) expect(found).toBeLessThanOrEqual(dni + dhi + ghi + 1e-9);
        const towards = lawful(() => sunDirection({ daysSinceJ2000: days * 100, latitudeDeg, longitudeDeg }));
        const faces = lawful(() =>
          surfaceFacing({ tiltDeg: Math.abs(tiltDeg), azimuthDeg: Math.abs(azimuthDeg) }),
        );
        if (towards === null || faces === null) return;
        for (const { up, east, north } of [towards, faces])
          expect(up * up + east * east + north * north).toBeCloseTo(1, 9);
        const light = { directNormal: dni, diffuseHorizontal: dhi, globalHorizontal: ghi };
        const same = lawful(() => irradianceFacing(light, 0.2, faces, towards));
        // On the very horizon one of the two ways may still see the beam, the other not.
        if (same !== null && found !== null && Math.abs(towards.up) > 1e-9)
          expect(Math.abs(same - found)).toBeLessThan(1e-6 * (1 + found));
      },
    ),
    runs(74, 1, 1.1),
  );
});

everyFunctionTried("weather", weather);
