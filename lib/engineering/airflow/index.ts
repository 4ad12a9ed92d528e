export { airflowAgainstDesign, airflowPerTon, fanPowerPerAirflow } from "./airflow-checks";
export { type AirflowInput, type AirflowStage, airflowFindings } from "./airflow-findings";
export type { AirflowLimitValues, StageName } from "./check-input";
export { designAirflowCfm, supplyDifferenceF } from "./design-airflow";
export { type FanGrade, fanEfficacy, type WattsPerCfm } from "./fan-efficacy";
export {
  ductCoefficient,
  fanOperatingPoint,
  fanOperatingPoints,
  filterLoading,
  type OperatingPoint,
} from "./fan-operating-point";
export { airflowFromStaticTable, type FanPoint } from "./fan-table";
export { flowPlateAirflowCfm, flowPlateCorrection } from "./flow-plate";
export { airflowLimits } from "./limits";
export {
  airflowAgainstElectricHeatMinimum,
  airflowAgainstMakersMinimum,
  coilAboveFrost,
} from "./low-airflow-guards";
export { type Measured, type Range, verdictOnMeasured } from "./measured";
export {
  type CfmPerTon,
  cfmPerTon,
  type ElectricHeat,
  temperatureRiseAirflowCfm,
} from "./measured-airflow";
export { airflowRules } from "./rules";
export { nextStepFor, numberText, roundedDown } from "./sentences";
export {
  type FrictionRate,
  frictionRate,
  type StaticBudget,
  type StaticComponents,
  staticBudget,
} from "./static-budget";
export { staticAgainstDesign, staticAgainstMaximum } from "./static-checks";
