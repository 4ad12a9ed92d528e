import { chance, humidityAt, moistureOf, type Story } from "./odd-house";

/** Weather of a season with days of their own, repeatable. */
function season(
  seed: number,
  dryF: readonly [number, number],
  dewF: readonly [number, number],
): Story["weather"] {
  const between = chance(seed * 31_337 + 11);
  between(0, 1);
  const days = Array.from({ length: 800 }, () => ({ dryF: between(...dryF), dewF: between(...dewF) }));
  return (day) => days[day % days.length] ?? { dryF: 80, dewF: 70 };
}
const JULY = Date.UTC(2025, 6, 1);
const summer = (seed: number) => season(seed, [75, 89], [67, 74]);

/** A year of weather: warm and wet in July, cool and dry in January. */
function yearOf(seed: number): Story["weather"] {
  const between = chance(seed * 31_337 + 17);
  between(0, 1);
  const days = Array.from({ length: 800 }, (_, day) => {
    const warm = Math.cos(((day - 15) / 365) * 2 * Math.PI);
    return { dryF: 66 + 16 * warm + between(-6, 6), dewF: 55 + 15 * warm + between(-4, 4) };
  });
  return (day) => days[day] ?? { dryF: 66, dewF: 55 };
}

export const STORIES: Readonly<Record<string, (seed: number) => Story>> = {
  sound: (seed) => ({ firstDay: JULY, days: 28, weather: summer(seed) }),
  vacation: (seed) => ({
    firstDay: JULY,
    days: 42,
    weather: summer(seed),
    setpointF: (day) => (day >= 12 && day < 30 ? 85 : 75),
    inside: (day) => (day >= 12 && day < 30 ? 0.004 : 0.019),
  }),
  attic: (seed) => ({
    firstDay: JULY,
    days: 31,
    weather: summer(seed),
    sensor: (day, hour, room) => {
      if (day < 15) return room;
      const f = Math.min(128, 100 + 22 * Math.cos(((hour - 15.5) / 24) * 2 * Math.PI));
      return { f, rh: humidityAt(f, moistureOf(room) * 1.35) };
    },
  }),
  "whole degrees": (seed) => ({ firstDay: JULY, days: 28, weather: summer(seed), written: Math.round }),
  "whole degrees, held tightly": (seed) => ({
    firstDay: JULY,
    days: 28,
    weather: summer(seed),
    sensor: (day, hour) => ({
      f: 75 + 0.3 * Math.sin(hour),
      rh: 52 + 0.4 * Math.cos(hour) + Math.round(day / 3),
    }),
    written: Math.round,
  }),
  "windows in april": (seed) => ({
    firstDay: Date.UTC(2025, 3, 1),
    days: 30,
    weather: season(seed, [62, 74], [57, 66]),
    exchange: (_, hour) => (hour >= 7 && hour < 23 ? 0.02 : 0.0005),
  }),
  "power cut": (seed) => ({
    firstDay: JULY,
    days: 28,
    weather: summer(seed),
    hasPower: (day) => day < 10 || day >= 12,
  }),
  "winter only": (seed) => ({
    firstDay: Date.UTC(2025, 0, 1),
    days: 40,
    weather: season(seed, [30, 50], [22, 38]),
    heats: true,
  }),
  "dry winter": (seed) => ({
    firstDay: Date.UTC(2025, 0, 1),
    days: 40,
    weather: season(seed, [30, 50], [22, 38]),
    inside: () => 0.004,
    heats: true,
  }),
  "36 hours": (seed) => ({ firstDay: JULY, days: 1.5, weather: summer(seed) }),
  "36 wet hours": (seed) => ({ firstDay: JULY, days: 1.5, weather: summer(seed), inside: () => 0.06 }),
  "more people since autumn": (seed) => ({
    firstDay: Date.UTC(2025, 9, 1),
    days: 42,
    weather: season(seed, [58, 74], [42, 56]),
    inside: () => 0.06,
  }),
  "house-mate": (seed) => ({
    firstDay: JULY,
    days: 730,
    weather: yearOf(seed),
    inside: (day) => (day >= 365 ? 0.055 : 0.019),
  }),
};
