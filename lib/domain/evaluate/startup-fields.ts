import { READING_NAMES } from "@/lib/engineering/startup";
import { fieldOfReading, type StartupStageKey } from "./startup-readings";

/** `stages.0.readings.airflowCfm` and the like → the field of the record. */
export function fieldOfInput(input: string, keys: readonly StartupStageKey[]): string | null {
  const [, index, rest] = /^stages\.(\d)\.(?:readings\.)?(.+)$/.exec(input) ?? [];
  const key = keys[Number(index)];
  if (rest === undefined || key === undefined) return input === "elevationFt" ? null : (SITE[input] ?? null);
  const reading = READING_NAMES.find((name) => name === rest);
  if (reading === "externalStaticInWc" || rest === "externalStatic") return `${key}ReturnStaticInWc`;
  if (reading) return fieldOfReading(key, reading);
  return OTHERS[rest]?.(key) ?? null;
}

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
};
