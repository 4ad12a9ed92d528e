/** The load summary as the job records it, with the weather's own design values. `null`: not given. */
export type LoadReadings = {
  readonly sensibleCoolingBtuh: number | null;
  readonly latentCoolingBtuh: number | null;
  readonly heatingBtuh: number | null;
  readonly indoorCoolingDbF: number | null;
  readonly indoorCoolingRhPct: number | null;
  readonly indoorHeatingDbF: number | null;
  readonly outdoorCoolingDbF: number | null;
  readonly outdoorCoolingWbF: number | null;
  readonly outdoorHeatingDbF: number | null;
  /** Design dry bulb for cooling from the weather file the job uses. */
  readonly weatherCoolingDbF: number | null;
  /** Design dry bulb for heating from the weather file the job uses. */
  readonly weatherHeatingDbF: number | null;
  /** Design dew point of wet, mild weather, and the dry bulb with it. */
  readonly wetMildDewPointF: number | null;
  readonly wetMildDbF: number | null;
  readonly elevationFt: number | null;
  readonly floorAreaFt2: number | null;
  readonly bedrooms: number | null;
  readonly houseHeightFt: number | null;
  readonly leakageCfm50: number | null;
  readonly leakageKnownBy: "measured" | "assumed" | null;
  readonly windShieldingFactor: number | null;
  readonly ventilationCfm: number | null;
  readonly ductsInside: boolean | null;
  /** Duct gain in the cooling load. */
  readonly ductLoadBtuh: number | null;
  readonly duplicatedGainsBtuh: number | null;
  readonly safetyFactorPct: number | null;
};

/** Those of the named readings that have not been given. */
export function missingOf(
  readings: LoadReadings,
  fields: readonly (keyof LoadReadings)[],
): readonly (keyof LoadReadings)[] {
  return fields.filter((field) => readings[field] === null);
}

/**
 * "1,234 Btu/h" for a sentence.
 *
 * @param value - Btu/h; rounded to 1.
 */
export function btuhText(value: number): string {
  return `${Math.round(value).toLocaleString("en-US")} Btu/h`;
}
