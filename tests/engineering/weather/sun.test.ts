import { getPosition } from "suncalc";
import { describe, expect, it } from "vitest";
import { sunPosition, tiltedIrradiance } from "@/lib/engineering/weather";

const SOURCE =
  "a general sun-position library (computed) and the geometry of sphere and plane (physics); isotropic sky of Liu and Jordan [M+]";

const J2000_MS = Date.UTC(2000, 0, 1, 12);
const daysAt = (ms: number) => (ms - J2000_MS) / 86_400_000;

describe("sun position against a general sun-position library (computed)", () => {
  it.each([
    ["Houston", 29.98, -95.37],
    ["Indianapolis", 39.72, -86.27],
    ["southern", -33.9, 151.2],
  ])("%s, every 97 minutes of a year", (_, latitudeDeg, longitudeDeg) => {
    let worstElevation = 0;
    let worstAzimuth = 0;
    for (let ms = Date.UTC(2001, 0, 1); ms < Date.UTC(2002, 0, 1); ms += 97 * 60_000) {
      const ours = sunPosition({ daysSinceJ2000: daysAt(ms), latitudeDeg, longitudeDeg });
      const theirs = getPosition(new Date(ms), latitudeDeg, longitudeDeg);
      if (ours.elevationDeg < 5) continue;
      // The library adds refraction: 1.02′/tan(h + 10.3/(h + 5.11)) (Sæmundsson, from memory).
      const h = ours.elevationDeg;
      const refracted = h + 1.02 / 60 / Math.tan(((h + 10.3 / (h + 5.11)) * Math.PI) / 180);
      worstElevation = Math.max(worstElevation, Math.abs(refracted - theirs.altitude));
      // Near the zenith a small angle on the sky is a large azimuth.
      const turn = ((ours.azimuthDeg - theirs.azimuth + 540) % 360) - 180;
      worstAzimuth = Math.max(worstAzimuth, Math.abs(turn) * Math.cos((h * Math.PI) / 180));
    }
    // The Almanac's low-precision formula is good to 0.01°, the library states about as much.
    expect(worstElevation).toBeLessThan(0.03);
    expect(worstAzimuth).toBeLessThan(0.03);
  });

  it("noon height at the June solstice is 90 − latitude + 23.44 (closed form)", () => {
    // 21 June 2001, solar noon at Greenwich about 12:02 UT.
    const ms = Date.UTC(2001, 5, 21, 12, 2);
    const { elevationDeg } = sunPosition({ daysSinceJ2000: daysAt(ms), latitudeDeg: 40, longitudeDeg: 0 });
    expect(elevationDeg).toBeCloseTo(90 - 40 + 23.44, 1);
  });
});

describe(`irradiance on a surface against closed forms: ${SOURCE}`, () => {
  const light = { directNormal: 250, diffuseHorizontal: 40, globalHorizontal: 165, groundReflectance: 0.2 };
  const sun = { elevationDeg: 30, azimuthDeg: 180 };

  it("flat: 250 · sin 30° + 40 = 165", () => {
    expect(tiltedIrradiance({ ...light, sun, tilt: { tiltDeg: 0, azimuthDeg: 0 } })).toBeCloseTo(165, 9);
  });

  it("south wall: 250 · cos 30° + 40/2 + 0.2 · 165/2 = 253.006", () => {
    const wall = { tiltDeg: 90, azimuthDeg: 180 };
    expect(tiltedIrradiance({ ...light, sun, tilt: wall })).toBeCloseTo(216.5064 + 20 + 16.5, 3);
  });

  it("a north wall sees sky and ground only: 36.5; after sunset nobody sees the beam", () => {
    const wall = { tiltDeg: 90, azimuthDeg: 0 };
    expect(tiltedIrradiance({ ...light, sun, tilt: wall })).toBeCloseTo(36.5, 9);
    const set = { elevationDeg: -1, azimuthDeg: 180 };
    const south = { tiltDeg: 90, azimuthDeg: 180 };
    expect(tiltedIrradiance({ ...light, sun: set, tilt: south })).toBeCloseTo(36.5, 9);
  });

  it("tilted to meet the sun squarely: 250 + 40 (1 + cos 60°)/2 + 33 (1 − cos 60°)/2 = 288.25", () => {
    expect(tiltedIrradiance({ ...light, sun, tilt: { tiltDeg: 60, azimuthDeg: 180 } })).toBeCloseTo(
      288.25,
      9,
    );
  });
});

describe("a whole day of beam against its closed form: 24/π · G · (cos(φ−β) cos δ sin ω + ω sin(φ−β) sin δ), Duffie & Beckman (recalled)", () => {
  // 21 June 2001 at 40° north, without air; δ = 23.44° all day. ω is when the sun sets, or when it leaves the surface, whichever comes first.
  const rad = Math.PI / 180;
  const declination = 23.44 * rad;
  const setsAt = (latitudeDeg: number) => Math.acos(-Math.tan(latitudeDeg * rad) * Math.tan(declination));
  it.each([0, 20, 40, 60])("tilted %d° to the south", (tiltDeg) => {
    const lower = (40 - tiltDeg) * rad;
    const hourAngle = Math.min(setsAt(40), setsAt(40 - tiltDeg));
    const expected =
      (24 / Math.PI) *
      400 *
      (Math.cos(lower) * Math.cos(declination) * Math.sin(hourAngle) +
        hourAngle * Math.sin(lower) * Math.sin(declination));
    let day = 0;
    for (let minute = 0; minute < 1_440; minute++) {
      const sun = sunPosition({
        daysSinceJ2000: daysAt(Date.UTC(2001, 5, 21) + (minute + 0.5) * 60_000),
        latitudeDeg: 40,
        longitudeDeg: 0,
      });
      const none = { diffuseHorizontal: 0, globalHorizontal: 0, groundReflectance: 0 };
      day += tiltedIrradiance({ ...none, directNormal: 400, tilt: { tiltDeg, azimuthDeg: 180 }, sun }) / 60;
    }
    // The sun's own place is known to 0.01° and its δ to 0.005°.
    expect(Math.abs(day / expected - 1)).toBeLessThan(5e-4);
  });
});
