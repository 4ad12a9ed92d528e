import type { SearchFound, SearchSpace, SystemModel, YearControls } from "@/lib/engineering/simulation";
import type { EquipmentModel } from "../catalog";
import type { JobContext } from "../evaluate/context";
import { type OptionInputs, optionContext } from "../options";
import { assuming, type ForecastChanges } from "./assumptions";
import { dehumidifierAt } from "./controls";
import type { ForecastPart } from "./missing";
import { optionSetup } from "./setup";
import { forecastSystem } from "./system";

/*
 * What may be set otherwise around one option, with what it takes: a setting 1, a control of its own 5, a dehumidifier 20 and more.
 * The measure is ours: common practice, no source.
 */
const SETTING = 1;
const NEW_CONTROL = 5;
const DEHUMIDIFIER = 20;
/** Capacities at the house's own air, pints a day. */
const DEHUMIDIFIER_SIZES = [30, 50, 70, 100] as const;
/** Ventilation waits while the outdoor dew point is above: about that of 75 °F air at 60 %, in the middle of the promise. */
const PAUSE_ABOVE_DEW_POINT_F = 60;
const NIGHT = { fromHour: 22, toHour: 6 } as const;

/** A choice and the option's fields that bring it about. */
type Choice<T> = {
  readonly name: string;
  readonly effort: number;
  readonly value: T;
  readonly fields: Partial<OptionInputs>;
};

export type OptionSearch = {
  readonly space: SearchSpace;
  /** The fields of the option that a combination found stands for. */
  readonly fieldsOf: (found: SearchFound) => Partial<OptionInputs>;
  /** What of it an option does not hold: to be set in the control setup or ordered. */
  readonly byHand: (found: SearchFound) => readonly string[];
};

/** Everything an option could be set to with the same equipment, as the search takes it; or what the option lacks. */
export function optionSearch(
  job: JobContext,
  option: OptionInputs,
  model: EquipmentModel | null,
  changed: ForecastChanges["system"],
): ForecastPart<OptionSearch> {
  const base = optionSetup(optionContext(job, option, model), "as it is", changed);
  if (!base.ready || model === null) return base.ready ? { ready: false, missing: [] } : base;
  const { controls, ventilation, dehumidifier } = base.value.option;
  const capacity = capacities(model, option);
  const airflow = airflows(model, option);
  const systems = capacity.map((one) =>
    airflow.map((air): SystemModel | null => {
      const context = optionContext(job, { ...option, ...one.fields, ...air.fields }, model);
      const part = forecastSystem(context, assuming(changed));
      return part.ready ? part.value : null;
    }),
  );
  const control = controlChoices(controls, option);
  const air = ventilationChoices(ventilation);
  const dryers = dehumidifierChoices(job, option, dehumidifier, changed);
  return {
    ready: true,
    value: {
      space: { capacity, airflow, systems, controls: control, ventilation: air, dehumidifier: dryers },
      fieldsOf: ({ place }) => ({
        ...capacity[place.capacity]?.fields,
        ...airflow[place.airflow]?.fields,
        ...control[place.controls]?.fields,
        ...dryers[place.dehumidifier]?.fields,
      }),
      byHand: ({ place }) => [
        ...(place.controls > 0 && Object.keys(control[place.controls]?.fields ?? {}).length === 0
          ? [`Control setup: ${control[place.controls]?.name}`]
          : []),
        ...(place.ventilation > 0 ? [`Ventilation: ${air[place.ventilation]?.name}`] : []),
      ],
    },
  };
}

function capacities({ data }: EquipmentModel, option: OptionInputs): readonly Choice<null>[] {
  const colder = (data.heldCoil?.colderCoilByF ?? 0) > 0 ? [false, true] : [option.colderCoilCooling];
  return data.capacitySettings.flatMap(({ name }) =>
    colder.map((isColder) => {
      const same = name === option.capacitySetting ? 0 : SETTING;
      const asIs = (isColder ?? false) === (option.colderCoilCooling ?? false) ? 0 : SETTING;
      return {
        name: isColder ? `${name}, colder coil` : name,
        effort: same + asIs,
        value: null,
        fields: { capacitySetting: name, colderCoilCooling: isColder },
      };
    }),
  );
}

/** Every fan setting for full capacity; the first stage keeps its own unless that blows more. */
function airflows({ fan }: EquipmentModel, option: OptionInputs): readonly Choice<null>[] {
  const strength = (setting: string | null) =>
    Math.max(0, ...fan.filter((row) => row.airflowSetting === setting).map((row) => row.airflowCfm));
  return [...new Set(fan.map((row) => row.airflowSetting))].map((second) => {
    const own = option.firstStageAirflowSetting;
    const first = own === null || strength(own) <= strength(second) ? own : second;
    const changes = [second !== option.secondStageAirflowSetting, first !== own].filter(Boolean).length;
    return {
      name: first === null || first === second ? second : `${second}, first stage ${first}`,
      effort: changes * SETTING,
      value: null,
      fields: { secondStageAirflowSetting: second, firstStageAirflowSetting: first },
    };
  });
}

function controlChoices(controls: YearControls, option: OptionInputs): readonly Choice<YearControls>[] {
  const { settings } = controls;
  const like = (name: string, change: Partial<YearControls["settings"]>, fields: Partial<OptionInputs>) => ({
    name,
    effort: SETTING,
    value: { ...controls, settings: { ...settings, ...change } },
    fields,
  });
  const still = { fanBetweenCalls: "off", fanBetweenCallsMinPerH: null } as const;
  return [
    { name: "as set", effort: 0, value: controls, fields: {} },
    ...(settings.fanBetweenCalls === "off" ? [] : [like("fan off between calls", still, still)]),
    ...(settings.fanRunOnAfterCoolingS === 0
      ? []
      : [like("no fan run-on", { fanRunOnAfterCoolingS: 0 }, {})]),
    ...(settings.coolingPastSetpointF >= 2
      ? []
      : [like("cooling up to 2 °F past the setpoint while humid", { coolingPastSetpointF: 2 }, {})]),
    ...(option.secondStageStartOffsetF === null || option.secondStageStartOffsetF >= 3
      ? []
      : [
          like(
            "second stage from 3 °F above the setpoint",
            { secondStageStartOffsetF: 3 },
            { secondStageStartOffsetF: 3 },
          ),
        ]),
  ];
}

function ventilationChoices(now: SearchSpace["ventilation"][number]["value"]): readonly Choice<typeof now>[] {
  const asIs = { name: "as it is", effort: 0, value: now, fields: {} };
  if (now.kind === "none") return [asIs];
  const { airflowCfm } = now;
  return [
    asIs,
    {
      name: `the same air from ${NIGHT.fromHour}:00 to ${NIGHT.toHour}:00 only`,
      effort: NEW_CONTROL,
      value: { kind: "timed", airflowCfm: Math.min(2_000, airflowCfm * 3), ...NIGHT },
      fields: {},
    },
    {
      name: `waits above ${PAUSE_ABOVE_DEW_POINT_F} °F outdoor dew point`,
      effort: NEW_CONTROL,
      value: { kind: "on need", airflowCfm, pauseAboveDewPointF: PAUSE_ABOVE_DEW_POINT_F },
      fields: {},
    },
  ];
}

type Dryer = SearchSpace["dehumidifier"][number]["value"];

function dehumidifierChoices(
  job: JobContext,
  option: OptionInputs,
  now: Dryer,
  changed: ForecastChanges["system"],
): readonly Choice<Dryer>[] {
  const asIs: Choice<Dryer> = {
    name: now === null ? "none" : `${option.dehumidifierPintsPerDay} pints/day, as it is`,
    effort: 0,
    value: now,
    fields: {},
  };
  if (now !== null) return [asIs];
  const { indoorCoolingDbF, indoorCoolingRhPct, humidityLimitPct } = job.inputs.load_summary;
  if (indoorCoolingDbF === null || indoorCoolingRhPct === null || humidityLimitPct === null) return [asIs];
  const air = { dryBulbF: indoorCoolingDbF, relativeHumidityPct: indoorCoolingRhPct, humidityLimitPct };
  return [
    asIs,
    ...DEHUMIDIFIER_SIZES.map((pints, place): Choice<Dryer> => {
      // The maker's rating is for more humid air; who orders it looks it up.
      const fields = { dehumidifierPintsPerDay: pints, dehumidifierAtHousePintsPerDay: pints };
      return {
        name: `${pints} pints/day at the house's air`,
        effort: DEHUMIDIFIER + place,
        value: dehumidifierAt(pints, air, assuming(changed)),
        fields,
      };
    }),
  ];
}
