/** A point on the ground: north and east positive, °. */
export type PlaceOnEarth = { readonly latitude: number; readonly longitude: number };

/** Mean radius of the earth: 6,371.0 km, in miles. */
const EARTH_RADIUS_MI = 6_371.0 / 1.609344;

/** Distance along the great circle, miles; on a sphere, which is within 0.6 % of the earth (haversine formula, recalled). */
export function greatCircleMi(a: PlaceOnEarth, b: PlaceOnEarth): number {
  const rad = (deg: number) => (deg * Math.PI) / 180;
  const half = (from: number, to: number) => Math.sin(rad(to - from) / 2) ** 2;
  const chord =
    half(a.latitude, b.latitude) +
    Math.cos(rad(a.latitude)) * Math.cos(rad(b.latitude)) * half(a.longitude, b.longitude);
  return 2 * EARTH_RADIUS_MI * Math.asin(Math.min(1, Math.sqrt(chord)));
}

export type DistantWeather<T> = {
  readonly file: T;
  /** `null` while nobody has said where the home is. */
  readonly distanceMi: number | null;
  /** The station above the home, ft; negative below. */
  readonly higherByFt: number | null;
};

/** Weather files with their distance from a home, the nearest first; by name while the home's place is not known. */
export function byDistance<T extends PlaceOnEarth & { readonly elevationFt: number; readonly name: string }>(
  files: readonly T[],
  home: { readonly place: PlaceOnEarth | null; readonly elevationFt: number | null },
): readonly DistantWeather<T>[] {
  return files
    .map((file) => ({
      file,
      distanceMi: home.place === null ? null : greatCircleMi(home.place, file),
      higherByFt: home.elevationFt === null ? null : file.elevationFt - home.elevationFt,
    }))
    .sort(
      (a, b) => (a.distanceMi ?? 0) - (b.distanceMi ?? 0) || a.file.name.localeCompare(b.file.name, "en-US"),
    );
}
