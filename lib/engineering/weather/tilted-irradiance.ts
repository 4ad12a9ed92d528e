import { cos, sin } from "../exact-functions";
import { requireRange } from "../units";
import type { Direction, SunPosition } from "./sun";

const RAD = Math.PI / 180;

/** A flat surface to the sun. */
export type Tilt = {
  /** 0 lies flat and looks up, 90 stands, 180 looks down, °. */
  readonly tiltDeg: number;
  /** Where it looks, clockwise from north, °, 0 to 360. */
  readonly azimuthDeg: number;
};

/** Light, Btu/(h·ft²). */
export type Light = {
  readonly directNormal: number;
  readonly diffuseHorizontal: number;
  readonly globalHorizontal: number;
};

/**
 * Irradiance on a tilted surface: beam, sky taken as equally bright all over, and light from the ground.
 *
 * `DNI·cos θ + DHI·(1 + cos β)/2 + ρ·GHI·(1 − cos β)/2`; no beam with the sun behind the surface or below the horizon.
 *
 * @param input - `directNormal`, `diffuseHorizontal` and `globalHorizontal` 0 to 700 Btu/(h·ft²); `groundReflectance` 0 to 1; `tilt` as
 * {@link Tilt}; `sun` as `sunPosition`.
 * @returns Btu/(h·ft²).
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see Isotropic sky model of Liu and Jordan (recalled).
 */
export function tiltedIrradiance(
  input: Light & { readonly groundReflectance: number; readonly tilt: Tilt; readonly sun: SunPosition },
): number {
  const elevationDeg = requireRange("elevationDeg", input.sun.elevationDeg, "°", -90, 90);
  const azimuthDeg = requireRange("sun.azimuthDeg", input.sun.azimuthDeg, "°", 0, 360);
  // A surface that faces the sun looks along its direction.
  const sun = facing({ tiltDeg: 90 - elevationDeg, azimuthDeg });
  return irradianceFacing(input, input.groundReflectance, surfaceFacing(input.tilt), sun);
}

/**
 * Where a surface looks.
 *
 * @param tilt - Ranges at {@link Tilt}.
 * @returns Parts of a vector of length 1.
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see Spherical coordinates (computed).
 */
export function surfaceFacing(tilt: Tilt): Direction {
  requireRange("tiltDeg", tilt.tiltDeg, "°", 0, 180);
  requireRange("azimuthDeg", tilt.azimuthDeg, "°", 0, 360);
  return facing(tilt);
}

function facing({ tiltDeg, azimuthDeg }: Tilt): Direction {
  const level = sin(tiltDeg * RAD);
  return {
    up: cos(tiltDeg * RAD),
    east: level * sin(azimuthDeg * RAD),
    north: level * cos(azimuthDeg * RAD),
  };
}

/**
 * As {@link tiltedIrradiance}, with sun and surface as directions: for many hours and few surfaces.
 *
 * @param light - Each 0 to 700 Btu/(h·ft²).
 * @param groundReflectance - 0 to 1.
 * @param surface - From {@link surfaceFacing}.
 * @param sun - From `sunDirection`.
 * @returns Btu/(h·ft²).
 * @throws {@link OutOfRangeError} outside those ranges.
 * @see Isotropic sky model of Liu and Jordan (recalled); cos θ as the product of two directions (computed).
 */
export function irradianceFacing(
  light: Light,
  groundReflectance: number,
  surface: Direction,
  sun: Direction,
): number {
  const direct = requireRange("directNormal", light.directNormal, "Btu/(h·ft²)", 0, 700);
  const diffuse = requireRange("diffuseHorizontal", light.diffuseHorizontal, "Btu/(h·ft²)", 0, 700);
  const global = requireRange("globalHorizontal", light.globalHorizontal, "Btu/(h·ft²)", 0, 700);
  const reflectance = requireRange("groundReflectance", groundReflectance, "ratio", 0, 1);
  const cosIncidence = surface.up * sun.up + surface.east * sun.east + surface.north * sun.north;
  const beam = sun.up > 0 && cosIncidence > 0 ? direct * cosIncidence : 0;
  return beam + (diffuse * (1 + surface.up)) / 2 + (reflectance * global * (1 - surface.up)) / 2;
}
