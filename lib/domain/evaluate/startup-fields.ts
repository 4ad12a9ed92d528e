import { READING_NAMES } from "@/lib/engineering/startup";
import { fieldOfReading, type StartupStageKey } from "./startup-readings";

const STAGE_INPUT = /^stages\.(\d)\.(?:readings\.)?(.+)$/;

/** `stages.0.readings.airflowCfm` and the like → the field of the record. */
export function fieldOfInput(input: string, keys: readonly StartupStageKey[]): string | null {
  const [, index, rest] = STAGE_INPUT.exec(input) ?? [];
  const key = keys[Number(index)];
  if (rest === undefined || key === undefined) return input === "elevationFt" ? null : (SITE[input] ?? null);
  const reading = READING_NAMES.find((name) => name === rest);
  if (reading === "externalStaticInWc" || rest === "externalStatic") return `${key}ReturnStaticInWc`;
  if (reading) return fieldOfReading(key, reading);
  return OTHERS[rest]?.(key) ?? null;
}

/** True for what the record has no field for at that stage: asking for it again and again would help nobody. */
export function isNeverAsked(input: string, keys: readonly StartupStageKey[]): boolean {
  const [, index, rest] = STAGE_INPUT.exec(input) ?? [];
  return keys[Number(index)] === "first" && rest !== undefined && FULL_CAPACITY_ONLY.has(rest);
}

/** The first stage draws another current, and has no design of its own unless its airflow is set. */
const FULL_CAPACITY_ONLY: ReadonlySet<string> = new Set([
  "outdoorUnitVolts",
  "outdoorUnitAmps",
  "outdoorUnitPowerW",
  "nameplateVolts",
  "ratedAmps",
  "designCfm",
  "designStaticInWc",
]);

const SITE: Readonly<Record<string, string>> = {
  refrigerant: "refrigerant",
  meteringDevice: "meteringDevice",
};
const OTHERS: Readonly<Record<string, (key: StartupStageKey) => string>> = {
  steadyMinutes: (key) => `${key}StabilisedMin`,
  condensateMinutes: (key) => `${key}CondensateMin`,
  makerSuperheatF: () => "targetSuperheatF",
  makerSubcoolingF: () => "targetSubcoolingF",
  airflow: (key) => `${key}AirflowCfm`,
  fanPower: (key) => `${key}FanPowerW`,
  nameplateVolts: () => "nameplateVolts",
  ratedAmps: () => "ratedAmps",
};
