import { getPosition } from "suncalc";
import { describe, expect, it } from "vitest";
import {
  type CrossCheckReadings,
  crossCheckFindings,
  type DesignDayInput,
  designDayPeaks,
  simulateYear,
} from "@/lib/engineering/simulation";
import { throughMass } from "@/lib/engineering/simulation/design-day";
import { clearDayLight } from "@/lib/engineering/simulation/design-day-sun";
import { BASE, HOUSE, SYSTEM, stageAt, steadyWeather } from "./fixtures";
import { LOAD } from "./load-of-a-house";

const SOURCE =
  "hand balances at the design condition (physics); wet-bulb equation of ASHRAE Fundamentals 2017 ch. 1 with Ws(76 °F) = 0.01945 from tables (from memory, sure); ASHRAE clear-sky coefficients of July 344, 0.207, 0.136 (from memory, sure) with the sun of suncalc";

const INPUT: DesignDayInput = {
  ...LOAD,
  elevationFt: 0,
  indoorCoolingRhPct: 50,
  outdoorCoolingWbF: 76,
};
/** A day without night and sun: what is left can be done by hand. */
const FLAT = { glassShareOfFloor: 0, dailyRangeF: 0 };

describe(`the design day: ${SOURCE}`, () => {
  it("sensible by hand", () => {
    // UA 604.2 (see house-from-load-summary). Leakage 82.8 √(0.015·19 + 0.0039·7.5²) = 58.8 cfm, with the fan 118.8.
    // (604.2 + 1.08·118.8)·19 = 13,918; people 4·230 and appliances 2,400 = 3,320. Together 17,238 Btu/h.
    const found = designDayPeaks(INPUT, FLAT);
    expect(Math.abs(found.sensibleBtuh - 17_238)).toBeLessThan(20);
    expect(Math.abs(found.parts.enclosure - 11_480)).toBeLessThan(15);
    expect(Math.abs(found.parts.outdoorAir - 2_438)).toBeLessThan(5);
    expect(found.parts.gains).toBe(3_320);
  });

  it("latent by hand", () => {
    // Outdoors W = ((1093 − 0.556·76)·0.01945 − 0.24·18)/(1093 + 0.444·94 − 76) = 0.01523; indoors 75 °F 50 % 0.00926.
    // 4.5·118.8·0.00597·1,100 (vapour at 94 °F) = 3,511; inside 0.6276 lb/h · 1,054 = 661. Together 4,172; tables read real air,
    // up to 0.5 % wetter, which the difference of two doubles: within 2 %.
    expect(Math.abs(designDayPeaks(INPUT, FLAT).latentBtuh / 4_172 - 1)).toBeLessThan(0.02);
  });

  it("sun at the middle of the hours by hand, at the place of the sun that suncalc gives", () => {
    const light = clearDayLight();
    for (const hour of [7, 9, 12, 15, 17]) {
      const sun = getPosition(new Date(Date.UTC(2001, 6, 21, hour, 30)), 35, 0);
      // suncalc 2 counts azimuth in degrees from north and altitude in degrees.
      const radians = (degrees: number) => (degrees * Math.PI) / 180;
      const up = Math.sin(radians(sun.altitude));
      const beam = 344 * Math.exp(-0.207 / up);
      const onWalls = [0, 90, 180, 270].map((facing) =>
        Math.max(0, Math.cos(radians(sun.altitude)) * Math.cos(radians(sun.azimuth - facing))),
      );
      const direct = (beam * onWalls.reduce((sum, one) => sum + one, 0)) / 4;
      const sky = (0.136 * beam) / 2;
      const ground = (0.2 * beam * (0.136 + up)) / 2;
      // Refraction and the almanac's digits move the sun by less than 0.2°.
      expect(Math.abs((light[hour] ?? 0) / (direct + sky + ground) - 1)).toBeLessThan(0.01);
    }
    expect(light[0]).toBe(0);
  });

  it("what goes into the mass comes out of it, later and flatter", () => {
    const pulse = Array.from({ length: 24 }, (_, hour) => (hour >= 10 && hour < 16 ? 6_000 : 0));
    const out = throughMass(pulse, 2.5);
    const day = (hours: readonly number[]) => hours.reduce((sum, one) => sum + one, 0);
    expect(day(out)).toBeCloseTo(day(pulse), 6);
    // By small steps, ten days until it repeats.
    let flow = 0;
    let last = Array.from({ length: 24 }, () => 0);
    for (let round = 0; round < 10; round++) {
      last = pulse.map((one) => {
        let given = 0;
        for (let step = 0; step < 10_000; step++) {
          flow += ((0.5 * one - flow) / 2.5) * 1e-4;
          given += flow * 1e-4;
        }
        return 0.5 * one + given;
      });
    }
    for (const [hour, value] of out.entries()) expect(Math.abs(value - (last[hour] ?? 0))).toBeLessThan(1);
  });

  it("is the year's own house: a repeated day without sun, held by a big system, takes the same heat out", () => {
    const weather = steadyWeather(240, 94, 0.009);
    weather.windMph.fill(7.5);
    for (let hour = 0; hour < 240; hour++) {
      // Values stand at the hour's end.
      weather.dryBulbF[hour] = 94 - 10 * (1 - Math.cos((2 * Math.PI * ((hour % 24) + 1 - 15.5)) / 24));
    }
    const flatGains = Array.from({ length: 24 }, () => 3_320);
    const year = simulateYear({
      ...BASE,
      weather,
      ventilation: { kind: "continuous", airflowCfm: 60 },
      house: {
        ...HOUSE,
        conductanceBtuhPerF: 604.2,
        leakageAreaIn2: 82.8,
        apertures: [],
        gainsBtuhByHour: flatGains,
        massCapacitanceBtuPerF: 8_000,
        massCouplingBtuhPerF: 3_000,
      },
      system: { ...SYSTEM, stages: [{ ...stageAt(1_200, 100), fanW: 0 }], startTimeConstantS: 1 },
    });
    // By hand, hour by hour; leakage at its own temperature difference.
    let day = 0;
    for (let hour = 0; hour < 24; hour++) {
      const warmerF = 19 - 10 * (1 - Math.cos((2 * Math.PI * (hour + 0.5 - 15.5)) / 24));
      const cfm = 60 + 82.8 * Math.sqrt(0.015 * Math.abs(warmerF) + 0.0039 * 7.5 ** 2);
      day += (604.2 + 1.08 * cfm) * warmerF + 3_320;
    }
    // The thermostat holds 75 to 75.5 °F, which is up to half a degree of 730 Btu/(h·°F); outdoor air is hot, so lighter: 4 %.
    expect(Math.abs(year.heat.out / 10 / day - 1)).toBeLessThan(0.04);
    expect(designDayPeaks(INPUT, { glassShareOfFloor: 0 }).sensibleBtuh).toBeCloseTo(
      designDayPeaks(INPUT, FLAT).sensibleBtuh,
      6,
    );
  });
});

describe("beside the load summary", () => {
  const { storeys: _storeys, shelterClass: _class, ...loads } = INPUT;
  const READINGS: CrossCheckReadings = { ...loads, latentCoolingBtuh: 4_200, houseHeightFt: 8.5 };
  const told = (changes: Partial<CrossCheckReadings>) => crossCheckFindings({ ...READINGS, ...changes })[0];
  const model = designDayPeaks(INPUT);

  it("says both, and no more, when they lie within a fifth", () => {
    const said = told({
      sensibleCoolingBtuh: model.sensibleBtuh * 1.19,
      latentCoolingBtuh: model.latentBtuh * 0.9,
    });
    expect(said?.statement).toMatch(/within a fifth/);
    expect(said?.verdict).toBeNull();
    expect(said?.nextStep).toBeNull();
  });

  it("names the assumption that carries a larger sensible load, and is never a verdict", () => {
    const said = told({ sensibleCoolingBtuh: model.sensibleBtuh * 1.4 });
    expect(said?.statement).toMatch(
      /model's sensible load is 29 % below the summary's; what explains most of it is sunlit glass.*0\.05 assumed/,
    );
    expect(said?.verdict).toBeNull();
    expect(said?.nextStep).toMatch(/designer's calculation/);
  });

  it("names people for a latent load above: of the three they reach furthest", () => {
    // Four more people are 4 · 0.11 · 1.043 · 1,054 = 484 Btu/h. Ten pints a day instead of 3.9 are 6.1 · 1.043/24 · 1,054 = 279; a
    // tenth more of the measured leakage is 4.5 · 5.9 · 0.00597 · 1,100 = 174. So people, and 484 of 1,400 is 35 %.
    const said = told({ latentCoolingBtuh: model.latentBtuh + 1_400 });
    expect(said?.statement).toMatch(
      /model's latent load is 25 % below the summary's; what explains most of it is people/,
    );
    expect(said?.statement).toMatch(/4 assumed, 8 would close about 35 % of it/);
  });

  it("an unknown leakage is assumed, and then carries what it can", () => {
    const said = told({ leakageCfm50: null, latentCoolingBtuh: 9_000 });
    expect(said?.statement).toMatch(
      /what explains most of it is leakage at 50 Pa: 7\.0 air changes an hour assumed/,
    );
  });

  it("loads that belong to no house are told, not failed", () => {
    const said = told({ heatingBtuh: 4_000 });
    expect(said?.verdict).toBeNull();
    expect(said?.statement).toMatch(/cannot be laid beside.*Outdoor air alone/);
  });

  it("what is missing is named", () => {
    const said = told({ houseHeightFt: null, ventilationCfm: null });
    expect(said?.verdict).toBe("not measured");
    expect(said?.inputs).toEqual(["ventilationCfm", "houseHeightFt"]);
  });
});
