/** Types for the part of psychrolib 1.1.1 (JavaScript, CommonJS, MIT) used here; in IP units. */
declare module "psychrolib" {
  type PsychroLib = {
    readonly IP: 1;
    readonly SI: 2;
    SetUnitSystem(unitSystem: 1 | 2): void;
    /** psia, from elevation in ft. */
    GetStandardAtmPressure(altitudeFt: number): number;
    /** psia, from °F. Throws outside −148…392 °F. */
    GetSatVapPres(tempF: number): number;
    /** °F. Newton's method in ln p; the dry bulb is its first guess and its upper bound. */
    GetTDewPointFromVapPres(dryBulbF: number, vapourPressurePsia: number): number;
    /** lb/lb. Trap: a negative result comes back as 1e-7. */
    GetHumRatioFromTWetBulb(dryBulbF: number, wetBulbF: number, pressurePsia: number): number;
    /** lb/lb. Trap: a result below 1e-7 comes back as 1e-7. */
    GetHumRatioFromVapPres(vapourPressurePsia: number, pressurePsia: number): number;
    /** psia. Trap: a ratio below 1e-7 is taken as 1e-7. */
    GetVapPresFromHumRatio(humidityRatio: number, pressurePsia: number): number;
    /** Btu per lb of dry air. */
    GetMoistAirEnthalpy(dryBulbF: number, humidityRatio: number): number;
    /** °F. */
    GetTDryBulbFromEnthalpyAndHumRatio(enthalpyBtuPerLb: number, humidityRatio: number): number;
    /** ft³ per lb of dry air. */
    GetMoistAirVolume(dryBulbF: number, humidityRatio: number, pressurePsia: number): number;
    /** Its whole state in one call; the yardstick of the bench. */
    CalcPsychrometricsFromTWetBulb(
      dryBulbF: number,
      wetBulbF: number,
      pressurePsia: number,
    ): readonly number[];
  };
  const psychrolib: PsychroLib;
  export default psychrolib;
}
