export { componentFindings, LOAD_PARTS, type LoadComponents, type LoadTotal } from "./components";
export {
  leakageAreaIn2,
  leakageFlowCfm,
  type ShelterClass,
  type Storeys,
} from "./leakage";
export { loadLimits } from "./limits";
export { loadFindings } from "./load-findings";
export { BTUH_PER_TON, type LoadTotals, loadTotals } from "./load-totals";
export { type OutdoorAirLoad, outdoorAirLoad } from "./outdoor-air";
export { type PaddingEffects, paddingEffects, paddingFindings } from "./padding-findings";
export type { LoadReadings } from "./readings";
export { loadRules } from "./rules";
export { infiltrationCreditCfm, ventilationNeedCfm } from "./ventilation";
