import fc from "fast-check";
import { expect, it } from "vitest";
import { isEngineeringError } from "@/lib/engineering/errors";
import { designConditions, parseEpw, WEATHER_CHANNELS } from "@/lib/engineering/weather";
import { houston, withCell } from "./weather-files";

const RUNS = Number(process.env.DEWLEDGER_RANDOM_RUNS ?? 2000);

/** Runs it; a typed refusal is fine, anything else thrown is not. */
function attempt<T>(work: () => T): T | null {
  try {
    return work();
  } catch (error) {
    if (isEngineeringError(error)) return null;
    throw error;
  }
}

it("any text is read or refused", () => {
  const line = fc.array(fc.oneof(fc.string(), fc.double().map(String), fc.constant("99.9")), {
    maxLength: 40,
  });
  fc.assert(
    fc.property(fc.array(line, { maxLength: 20 }), fc.boolean(), (rows, withHeader) => {
      const text = rows.map((cells) => cells.join(",")).join("\n");
      attempt(() => parseEpw(withHeader ? `${houston.slice(0, 4_000)}${text}` : text));
    }),
    { seed: 71, numRuns: RUNS },
  );
});

it("a real file with wild cells gives finite values, listed gaps, or a refusal", () => {
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
      const weather = attempt(() => parseEpw(text));
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
    { seed: 72, numRuns: Math.ceil(RUNS / 200) },
  );
  expect(read).toBeGreaterThan(0);
});
