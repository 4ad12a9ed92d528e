import { isOfAbsentStage } from "@/lib/domain/absent-stage";
import type { FieldDef, FieldDefs } from "@/lib/domain/fields";
import { controlSetupFields } from "@/lib/domain/stages/control-setup";
import { startupRecordFields } from "@/lib/domain/stages/startup-record";
import { fieldText, namesIn } from "./field-text";
import type { PacketParts } from "./parts";

/** One setting: what it is called here and by its maker, what design wants, how it was left. */
export type Setting = {
  readonly key: string;
  readonly label: string;
  readonly makerLabel: string | null;
  readonly designed: string | null;
  readonly left: string | null;
};

/** Settings of the control setup that are made once and are no readings. */
const NOT_SETTINGS: ReadonlySet<string> = new Set([
  "controlModelId",
  "thermostatTemperatureF",
  "trustedTemperatureF",
  "thermostatHumidityPct",
  "trustedHumidityPct",
  "notes",
  "deviations",
]);

/** The partner as left of a setting whose name differs by more than `left…`. */
const LEFT_KEYS: Readonly<Record<string, string>> = {
  indoorTemperatureCorrectionF: "leftTemperatureCorrectionF",
  indoorHumidityCorrectionPct: "leftHumidityCorrectionPct",
};

/** Every setting to make, in the order in which it is made. */
export function settingsOf(parts: PacketParts): readonly Setting[] {
  const {
    equipment_selection: selection,
    airflow_setup: airflow,
    startup_record: startup,
  } = parts.context.inputs;
  const board: readonly Setting[] = [
    plain("capacitySetting", "Capacity setting", selection.capacitySetting, startup.leftCapacitySetting),
    plain(
      "secondStageAirflowSetting",
      "Airflow setting, full capacity",
      airflow.secondStageAirflowSetting,
      startup.leftSecondStageAirflowSetting,
    ),
    plain(
      "firstStageAirflowSetting",
      "Airflow setting, first stage",
      airflow.firstStageAirflowSetting,
      startup.leftFirstStageAirflowSetting,
    ),
  ];
  const isByTheHour = parts.context.inputs.control_setup.fanBetweenCalls === "minutes per hour";
  const keys = Object.keys(controlSetupFields).filter(
    (key) => !NOT_SETTINGS.has(key) && (isByTheHour || key !== "fanBetweenCallsMinPerH"),
  );
  // The board's labels belong to the equipment; a thermostat may show some of them in its own menu.
  return [...board, ...keys.map((key) => controlSetting(parts, key))]
    .filter(({ key, left }) => left !== null || !isOfAbsentStage(parts.context, key))
    .map((setting) => ({
      ...setting,
      makerLabel: parts.context.model?.data.boardLabels?.[setting.key] ?? setting.makerLabel,
    }));
}

const plain = (key: string, label: string, designed: string | null, left: string | null): Setting => ({
  key,
  label,
  makerLabel: null,
  designed,
  left,
});

type Values = Readonly<Record<string, string | number | boolean | null>>;

function controlSetting(parts: PacketParts, key: string): Setting {
  const field = (controlSetupFields as FieldDefs)[key] as FieldDef;
  const leftKey = LEFT_KEYS[key] ?? `left${key.charAt(0).toUpperCase()}${key.slice(1)}`;
  const leftField = (startupRecordFields as FieldDefs)[leftKey];
  const nameOf = namesIn(parts);
  const designed = (parts.context.inputs.control_setup as Values)[key] ?? null;
  const left = (parts.context.inputs.startup_record as Values)[leftKey] ?? null;
  return {
    key,
    label: field.label,
    makerLabel: parts.controls?.data.makerLabels[key] ?? null,
    designed: fieldText(field, designed, nameOf),
    left: leftField === undefined ? null : fieldText(leftField, left, nameOf),
  };
}
