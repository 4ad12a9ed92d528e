import { describe, expect, it } from "vitest";
import { ImpossibleStateError, OutOfRangeError } from "@/lib/engineering/errors";
import { parseEpw } from "@/lib/engineering/weather";
import { houston, indianapolis, rawColumn, withCell } from "./weather-files";

const SOURCE =
  "EPW data dictionary, EnergyPlus Auxiliary Programs [F]; header values typed from the two public files [F]";

describe(`place: ${SOURCE}`, () => {
  it("Houston", () => {
    const { place, hourCount, gaps } = parseEpw(houston);
    expect(place).toMatchObject({
      city: "HOUSTON",
      state: "TX",
      country: "USA",
      stationNumber: "722430",
      latitudeDeg: 29.98,
      longitudeDeg: -95.37,
      timeZoneH: -6,
    });
    expect(place.elevationFt).toBeCloseTo(108.27, 2); // 33 m / 0.3048
    expect(hourCount).toBe(8_760);
    expect(gaps).toEqual([]);
  });

  it("Indianapolis", () => {
    const { place } = parseEpw(indianapolis);
    expect(place).toMatchObject({ latitudeDeg: 39.72, longitudeDeg: -86.27, timeZoneH: -5 });
    expect(place.elevationFt).toBeCloseTo(790.68, 2); // 241 m / 0.3048
  });
});

describe("hours", () => {
  const weather = parseEpw(houston);

  it("the first row, by hand: 10.6 °C, 100 %, 101,200 Pa, sky 346 Wh/m², wind 350° 3.6 m/s", () => {
    expect([weather.month[0], weather.day[0], weather.hour[0]]).toEqual([1, 1, 1]);
    expect(weather.dryBulbF[0]).toBeCloseTo(51.08, 9);
    expect(weather.relativeHumidityPct[0]).toBe(100);
    expect(weather.pressurePsia[0]).toBeCloseTo(14.67782, 4); // 101,200 / 6,894.757
    expect(weather.skyInfraredBtuhPerFt2[0]).toBeCloseTo(109.681, 2); // 346 · 0.316998
    expect(weather.windDirectionDeg[0]).toBe(350);
    expect(weather.windMph[0]).toBeCloseTo(8.053, 3); // 3.6 · 2.236936
    // Saturation at 10.6 °C is 1,278 Pa (steam tables); 0.621945 · 1,278 / (101,200 − 1,278) = 0.007955, ±0.2 %
    expect(weather.humidityRatio[0]).toBeGreaterThan(0.00794);
    expect(weather.humidityRatio[0]).toBeLessThan(0.00797);
  });

  it.each([
    ["Houston", houston],
    ["Indianapolis", indianapolis],
  ])("%s: means of all columns agree with plain splitting", (_, text) => {
    const parsed = parseEpw(text);
    const mean = (values: ArrayLike<number>) => Array.from(values).reduce((a, b) => a + b, 0) / values.length;
    expect(mean(parsed.dryBulbF)).toBeCloseTo(mean(rawColumn(text, 7)) * 1.8 + 32, 8);
    expect(mean(parsed.dewPointF)).toBeCloseTo(mean(rawColumn(text, 8)) * 1.8 + 32, 8);
    expect(mean(parsed.relativeHumidityPct)).toBeCloseTo(mean(rawColumn(text, 9)), 8);
    expect(mean(parsed.pressurePsia)).toBeCloseTo(mean(rawColumn(text, 10)) * 1.450377377e-4, 6);
    expect(mean(parsed.windMph)).toBeCloseTo(mean(rawColumn(text, 22)) * 2.236936292, 6);
    // 0.3169983 Btu/h·ft² a W/m²
    expect(mean(parsed.globalHorizontalBtuhPerFt2)).toBeCloseTo(mean(rawColumn(text, 14)) * 0.3169983, 4);
    expect(mean(parsed.directNormalBtuhPerFt2)).toBeCloseTo(mean(rawColumn(text, 15)) * 0.3169983, 4);
    expect(mean(parsed.diffuseHorizontalBtuhPerFt2)).toBeCloseTo(mean(rawColumn(text, 16)) * 0.3169983, 4);
    expect(mean(parsed.skyInfraredBtuhPerFt2)).toBeCloseTo(mean(rawColumn(text, 13)) * 0.3169983, 4);
  });

  it("above freezing the file's own relative humidity is met from its dew point", () => {
    // The file rounds humidity to 1 % and dew point to 0.1 °C (about 0.7 % of humidity).
    let worst = 0;
    for (let hour = 0; hour < weather.hourCount; hour++) {
      const dry = weather.dryBulbF[hour] ?? 0;
      const dew = weather.dewPointF[hour] ?? 0;
      if (dew < 33) continue;
      // Magnus form, WMO guide (recalled): es = 6.112·exp(17.62 t / (243.12 + t)), within 0.3 % above freezing.
      const magnus = (f: number) => Math.exp((17.62 * (f - 32)) / 1.8 / (243.12 + (f - 32) / 1.8));
      const pct = (100 * magnus(dew)) / magnus(dry);
      worst = Math.max(worst, Math.abs(pct - (weather.relativeHumidityPct[hour] ?? 0)));
    }
    expect(worst).toBeLessThan(1.8);
  });

  it("a coastal year is wetter than an inland one", () => {
    const mean = (values: Float64Array) => values.reduce((a, b) => a + b, 0) / values.length;
    expect(mean(weather.humidityRatio)).toBeGreaterThan(mean(parseEpw(indianapolis).humidityRatio) * 1.3);
  });
});

describe("gaps and refusals", () => {
  it.each<[string, number, string, string]>([
    ["dryBulbF", 7, "99.9", "humidityRatio"],
    ["pressurePsia", 10, "999999", "humidityRatio"],
    ["windMph", 22, "999", "windMph"],
    ["directNormalBtuhPerFt2", 15, "9999", "directNormalBtuhPerFt2"],
  ])("the missing code of %s is a gap, listed with its row", (channel, column, code, alsoGap) => {
    const parsed = parseEpw(withCell(houston, 109, column, code));
    expect(parsed[channel as "dryBulbF"][100]).toBeNaN();
    expect(parsed.gaps.map((gap) => gap.channel)).toContain(channel);
    expect(parsed.gaps.map((gap) => gap.channel)).toContain(alsoGap);
    expect(parsed.gaps.every(({ hourIndex, row }) => hourIndex === 100 && row === 109)).toBe(true);
  });

  it("a missing dew point leaves the humidity ratio to relative humidity", () => {
    const parsed = parseEpw(withCell(houston, 109, 8, "99.9"));
    const whole = parseEpw(houston);
    expect(parsed.gaps.map((gap) => gap.channel)).toEqual(["dewPointF"]);
    expect((parsed.humidityRatio[100] ?? 0) / (whole.humidityRatio[100] ?? 1)).toBeCloseTo(1, 1);
  });

  it.each<[string, string, RegExp, typeof ImpossibleStateError | typeof OutOfRangeError]>([
    ["not a number", withCell(houston, 20, 7, "warm"), /Row 20, column 7 \(dry bulb\)/, ImpossibleStateError],
    ["an empty cell", withCell(houston, 20, 10, ""), /Row 20, column 10/, ImpossibleStateError],
    ["hot beyond range", withCell(houston, 20, 7, "80"), /row 20, column 7 \(dry bulb\)/, OutOfRangeError],
    [
      "a dew point above the dry bulb",
      withCell(houston, 20, 8, "40"),
      /Row 20, columns 7 to 10/,
      ImpossibleStateError,
    ],
    ["an hour out of order", withCell(houston, 20, 4, "5"), /Row 20, columns 2 to 4/, ImpossibleStateError],
    [
      "a row cut short",
      withCell(houston, 20, 7, "1")
        .split("\n")
        .map((line, i) => (i === 19 ? "1,2,3" : line))
        .join("\n"),
      /Row 20 has 3 columns/,
      ImpossibleStateError,
    ],
    ["half a year", houston.split("\n").slice(0, 4_000).join("\n"), /3992 hours/, ImpossibleStateError],
    ["no hours at all", houston.split("\n").slice(0, 8).join("\n"), /0 hours/, ImpossibleStateError],
    ["four records an hour", withCell(houston, 8, 3, "4"), /4 records an hour/, ImpossibleStateError],
    ["a latitude of 95", withCell(houston, 1, 7, "95"), /row 1, column 7 \(latitude\)/, OutOfRangeError],
    ["another file", "date,temp\n1,2\n", /not an EPW/, ImpossibleStateError],
    ["nothing", "", /not an EPW/, ImpossibleStateError],
  ])("%s is refused, naming where", (_, text, message, type) => {
    expect(() => parseEpw(text)).toThrow(type);
    expect(() => parseEpw(text)).toThrow(message);
  });

  it("line ends of any system and a byte-order mark are fine", () => {
    const same = parseEpw(`\uFEFF${houston.replaceAll("\n", "\r\n")}`);
    expect(same.dryBulbF).toEqual(parseEpw(houston).dryBulbF);
  });
});
