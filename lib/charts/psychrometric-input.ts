import type { MarkShape, Tone } from "./geometry";

/** A state of air: dry bulb, °F, and moisture content, grains of water per pound of dry air. */
export type AirPoint = { readonly dryBulbF: number; readonly grainsPerLb: number };

export type PsychrometricChartInput = {
  /** Curves of equal relative humidity as data, each in order of dry bulb; 100 % is drawn strongest. */
  readonly humidityCurves: readonly {
    readonly relativeHumidityPercent: number;
    readonly points: readonly AirPoint[];
  }[];
  /** The house's humidity limit, a curve like the others; the air above it is shaded. */
  readonly limit: { readonly label: string; readonly points: readonly AirPoint[] } | null;
  /** States worth a mark: outdoors, entering, leaving, the room. */
  readonly states: readonly (AirPoint & {
    readonly key: string;
    readonly label: string;
    readonly shape: MarkShape;
    readonly tone: Tone;
  })[];
  /** The air's way through the coil, from entering to leaving. */
  readonly coilPath: readonly AirPoint[];
  readonly width: number;
};
