import { requireRange } from "../units";
import type { SunPosition } from "./sun";

const RAD = Math.PI / 180;

/** A flat surface to the sun. */
export type Tilt = {
  /** 0 lies flat and looks up, 90 stands, 180 looks down, °. */
  readonly tiltDeg: number;
  /** Where it looks, clockwise from north, °, 0 to 360. */
  readonly azimuthDeg: number;
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
export function tiltedIrradiance(input: {
  readonly directNormal: number;
  readonly diffuseHorizontal: number;
  readonly globalHorizontal: number;
  readonly groundReflectance: number;
  readonly tilt: Tilt;
  readonly sun: SunPosition;
}): number {
  const direct = requireRange("directNormal", input.directNormal, "Btu/(h·ft²)", 0, 700);
  const diffuse = requireRange("diffuseHorizontal", input.diffuseHorizontal, "Btu/(h·ft²)", 0, 700);
  const global = requireRange("globalHorizontal", input.globalHorizontal, "Btu/(h·ft²)", 0, 700);
  const reflectance = requireRange("groundReflectance", input.groundReflectance, "ratio", 0, 1);
  const tilt = requireRange("tiltDeg", input.tilt.tiltDeg, "°", 0, 180) * RAD;
  const facing = requireRange("azimuthDeg", input.tilt.azimuthDeg, "°", 0, 360) * RAD;
  const elevation = requireRange("elevationDeg", input.sun.elevationDeg, "°", -90, 90) * RAD;
  const azimuth = requireRange("sun.azimuthDeg", input.sun.azimuthDeg, "°", 0, 360) * RAD;
  const cosIncidence =
    Math.sin(elevation) * Math.cos(tilt) + Math.cos(elevation) * Math.sin(tilt) * Math.cos(azimuth - facing);
  const beam = elevation > 0 && cosIncidence > 0 ? direct * cosIncidence : 0;
  return beam + (diffuse * (1 + Math.cos(tilt))) / 2 + (reflectance * global * (1 - Math.cos(tilt))) / 2;
}
