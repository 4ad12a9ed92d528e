import type { Instrument, Reading, Readings, StartupSite, StartupStage } from "@/lib/engineering/startup";

const instrument = (instrumentId: string, accuracy: number, unit: string): Instrument => ({
  instrumentId,
  accuracy,
  accuracyKind: "rectangular",
  unit,
  calibrationDue: "2027-03-31",
});

const HOOD = instrument("hood", 5, "% of reading");
const PROBE_RETURN = instrument("probe-1", 0.3, "°F");
const PROBE_SUPPLY = instrument("probe-2", 0.3, "°F");
const CLAMP = instrument("clamp", 0.5, "°F");
const GAUGE = instrument("gauge", 1, "psig");
const MANOMETER = instrument("manometer", 0.01, "in. w.c.");
const METER = (unit: string) => instrument("meter", 1, unit);

const read = (value: number, by: Instrument): Reading => ({ value, instrument: by });

/** A two-ton-and-more system, first stage, in good order. Invented demo readings. */
export const READINGS_OF_A_GOOD_STAGE: Readings = {
  airflowCfm: read(1_200, HOOD),
  returnDryBulbF: read(75, PROBE_RETURN),
  returnWetBulbF: read(63, PROBE_RETURN),
  returnRelativeHumidityPct: null,
  supplyDryBulbF: read(55, PROBE_SUPPLY),
  supplyWetBulbF: read(53.5, PROBE_SUPPLY),
  supplyRelativeHumidityPct: null,
  outdoorDryBulbF: read(88, CLAMP),
  externalStaticInWc: read(0.45, MANOMETER),
  suctionPressurePsig: read(130, GAUGE),
  liquidPressurePsig: read(340, GAUGE),
  suctionLineF: read(55, CLAMP),
  liquidLineF: read(95, CLAMP),
  outdoorUnitVolts: read(238, METER("V")),
  outdoorUnitAmps: read(11, instrument("ammeter", 2, "% of reading")),
  outdoorUnitPowerW: read(2_400, instrument("wattmeter", 2, "% of reading")),
  fanPowerW: read(400, METER("W")),
  condensateLb: read(3.1, instrument("scale", 0.05, "lb")),
};

export const GOOD_STAGE: StartupStage = {
  stage: "First stage",
  mode: "cooling",
  steadyMinutes: 20,
  readings: READINGS_OF_A_GOOD_STAGE,
  condensateMinutes: 30,
  expected: { totalBtuh: 34_000, sensibleBtuh: 26_500, moistureLbPerH: 6.5 },
  makerSuperheatF: null,
  makerSubcoolingF: 10,
  designCfm: 1_150,
  designStaticInWc: 0.5,
  maximumStaticInWc: 0.8,
  nameplateVolts: 230,
  ratedAmps: 14,
};

export const SITE: StartupSite = {
  elevationFt: 0,
  refrigerant: "R-410A",
  meteringDevice: "expansion valve",
  measuredOn: "2026-11-25",
};

/** The stage with some readings replaced. */
export function withReadings(changes: Partial<Readings>, stage: StartupStage = GOOD_STAGE): StartupStage {
  return { ...stage, readings: { ...stage.readings, ...changes } };
}

/** A reading with no instrument chosen. */
export const bare = (value: number): Reading => ({ value, instrument: null });

/** A reading by an instrument of its own with a rectangular accuracy. */
export const readWith = (value: number, accuracy: number, unit: string): Reading =>
  read(value, instrument(`own-${unit}-${accuracy}`, accuracy, unit));
