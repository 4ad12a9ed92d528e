/** The channels kept by day, each one float64 a sample, NaN for a gap. */
export const DAY_CHANNELS = [
  "indoorDbF",
  "indoorRhPct",
  "outdoorDbF",
  "outdoorRhPct",
  "outdoorDewPointF",
  "secondIndoorDbF",
  "secondIndoorRhPct",
  "setpointF",
  "firstStageFraction",
  "secondStageFraction",
  "auxiliaryFraction",
  "fanFraction",
] as const;
export type DayChannel = (typeof DAY_CHANNELS)[number];

export type LogDay = {
  /** ISO day of the house's own clock. */
  readonly day: string;
  readonly startsAt: Date;
  readonly offsetMinutes: Float64Array;
  readonly channels: { readonly [C in DayChannel]?: Float64Array };
};

/** Little endian on every machine, whatever its own order. */
export function packed(values: Float64Array): Uint8Array<ArrayBuffer> {
  const bytes = new Uint8Array(values.length * 8);
  const view = new DataView(bytes.buffer);
  values.forEach((value, index) => {
    view.setFloat64(index * 8, value, true);
  });
  return bytes;
}

/** The numbers of a packed column. */
export function unpacked(bytes: Uint8Array): Float64Array {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const values = new Float64Array(bytes.byteLength / 8);
  for (let index = 0; index < values.length; index++) values[index] = view.getFloat64(index * 8, true);
  return values;
}
