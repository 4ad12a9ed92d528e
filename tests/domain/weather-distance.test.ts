import { describe, expect, it } from "vitest";
import { byDistance, greatCircleMi } from "@/lib/domain/weather-distance";

const SOURCE =
  "arcs of a sphere of 6,371 km by hand (1° = 69.09 mi); New York JFK to Los Angeles LAX 2,475 mi, published by airlines (recalled)";

describe(`great circle, against ${SOURCE}`, () => {
  const at = (latitude: number, longitude: number) => ({ latitude, longitude });

  it("a degree of a meridian is 6,371 · π/180 km = 111.19 km = 69.09 mi", () => {
    expect(greatCircleMi(at(30, -95), at(31, -95))).toBeCloseTo(69.09, 2);
  });

  it("along 60° of latitude a degree is the arc to the chord of half a degree: 34.55 mi", () => {
    // sin(d/2) = cos 60° · sin 0.5° = 0.0043633, d = 0.0087266 rad, of 3,958.8 mi.
    expect(greatCircleMi(at(60, 0), at(60, 1))).toBeCloseTo(34.55, 2);
  });

  it("over the date line and to the antipode: half the circumference, 12,437 mi", () => {
    expect(greatCircleMi(at(0, 179.5), at(0, -179.5))).toBeCloseTo(69.09, 2);
    expect(greatCircleMi(at(30, -95), at(-30, 85))).toBeCloseTo(12_437, 0);
  });

  it("New York to Los Angeles within 0.6 %", () => {
    const found = greatCircleMi(at(40.6413, -73.7781), at(33.9425, -118.4081));
    expect(Math.abs(found / 2_475 - 1)).toBeLessThan(0.006);
  });
});

describe("weather files by distance", () => {
  const houston = { name: "Houston", latitude: 29.98, longitude: -95.37, elevationFt: 108 };
  const indianapolis = { name: "Indianapolis", latitude: 39.71, longitude: -86.27, elevationFt: 807 };

  it("nearest first, with how much higher the station stands", () => {
    const place = { latitude: 39.2, longitude: -85.9 };
    const found = byDistance([houston, indianapolis], { place, elevationFt: 650 });
    expect(found.map(({ file }) => file.name)).toEqual(["Indianapolis", "Houston"]);
    expect(found[0]?.higherByFt).toBe(157);
    // 0.51° north and 0.37° west at 39.5°: √(35.2² + (0.37 · 69.09 · cos 39.5°)²) = √(35.2² + 19.7²) = 40.4 mi.
    expect(Math.abs((found[0]?.distanceMi ?? 0) - 40.4)).toBeLessThan(0.2);
  });

  it("by name while nobody has said where the home is", () => {
    const found = byDistance([indianapolis, houston], { place: null, elevationFt: null });
    expect(found.map(({ file }) => file.name)).toEqual(["Houston", "Indianapolis"]);
    expect(found[0]).toMatchObject({ distanceMi: null, higherByFt: null });
  });
});
