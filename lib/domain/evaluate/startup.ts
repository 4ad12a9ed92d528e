import { moistAir, standardPressurePsia } from "@/lib/engineering/air";
import type { Finding } from "@/lib/engineering/findings";
import { subcoolingF, superheatF } from "@/lib/engineering/refrigerant";
import {
  type DeliveredCapacity,
  deliveredCapacity,
  type Readings,
  type SanityQuestion,
  type StartupSite,
  type StartupStage,
  sanityQuestions,
  startupFindings,
} from "@/lib/engineering/startup";
import type { AirflowAsSet } from "./airflow-as-set";
import { type Capacity, capacityOf, chosenSystem } from "./capacity";
import { type Derived, type JobContext, unknown, valueIfKnown } from "./context";
import { andThen, derive } from "./derive";
import { fieldOfInput, isNeverAsked } from "./startup-fields";
import { externalStatic, fieldOfReading, readingsOf, type StartupStageKey } from "./startup-readings";

export type MeasuredStage = {
  readonly key: StartupStageKey;
  readonly delivered: Derived<DeliveredCapacity>;
  readonly expected: Derived<Capacity>;
  readonly airflowCfm: number | null;
  readonly externalStaticInWc: number | null;
  readonly superheatF: Derived<number>;
  readonly subcoolingF: Derived<number>;
};

export type StartupResults = {
  readonly stages: readonly MeasuredStage[];
  readonly findings: readonly Finding[];
  readonly questions: readonly SanityQuestion[];
};

const NAMES: Readonly<Record<StartupStageKey, string>> = { second: "Full capacity", first: "First stage" };

/** Everything the startup record says: delivered capacity, charge, airflow, against what these conditions promise. */
export function startupResults(
  context: JobContext,
  designCfm: number | null,
  airflow: AirflowAsSet,
): StartupResults {
  const inputs = context.inputs.startup_record;
  const keys: readonly StartupStageKey[] =
    inputs.firstAirflowCfm === null && inputs.firstReturnDbF === null ? ["second"] : ["second", "first"];
  const site: StartupSite = {
    elevationFt: context.elevationFt,
    refrigerant: inputs.refrigerant,
    meteringDevice: inputs.meteringDevice,
    measuredOn: context.measuredOn,
  };
  const measured = keys.map((key) => measuredStage(context, key));
  const stages = measured.map((stage) => engineStage(context, stage, designCfm, airflow));
  return {
    stages: measured,
    findings: startupFindings({ ...site, stages }, context.limits)
      .filter(
        (one) => one.verdict !== "not measured" || !one.inputs.some((input) => isNeverAsked(input, keys)),
      )
      .map((one) => ({
        ...one,
        inputs: [...new Set(one.inputs.flatMap((input) => fieldOfInput(input, keys) ?? []))],
      })),
    questions: stages.flatMap((stage, index) => {
      const key = keys[index] ?? "second";
      const asked = sanityQuestions({ stage, previous: stages[index - 1] ?? null, site }, context.limits);
      return asked.map((one) => ({
        ...one,
        id: `${key}.${one.id}`,
        question: `${stage.stage}: ${one.question}`,
      }));
    }),
  };
}

function measuredStage(context: JobContext, key: StartupStageKey): MeasuredStage {
  const { elevationFt, inputs: all } = context;
  const inputs = all.startup_record;
  const readings = readingsOf(key, inputs, context.instruments);
  const { refrigerant } = inputs;
  const place = (given: { elevationFt: number }) => ({
    sitePressurePsia: standardPressurePsia(given.elevationFt),
  });
  return {
    key,
    delivered: delivered(context, readings, key),
    expected: expected(context, readings, key),
    airflowCfm: inputs[`${key}AirflowCfm`],
    externalStaticInWc: externalStatic(key, inputs),
    superheatF: derive(
      {
        refrigerant,
        elevationFt,
        pressure: inputs[`${key}SuctionPressurePsig`],
        line: inputs[`${key}SuctionLineF`],
      },
      (given) =>
        superheatF({
          ...place(given),
          refrigerant: given.refrigerant,
          suctionPressurePsig: given.pressure,
          suctionLineF: given.line,
        }) as number,
    ),
    subcoolingF: derive(
      {
        refrigerant,
        elevationFt,
        pressure: inputs[`${key}LiquidPressurePsig`],
        line: inputs[`${key}LiquidLineF`],
      },
      (given) =>
        subcoolingF({
          ...place(given),
          refrigerant: given.refrigerant,
          liquidPressurePsig: given.pressure,
          liquidLineF: given.line,
        }) as number,
    ),
  };
}

function delivered(
  context: JobContext,
  readings: Readings,
  key: StartupStageKey,
): Derived<DeliveredCapacity> {
  const missing = [
    ...(["airflowCfm", "returnDryBulbF", "supplyDryBulbF"] as const).filter(
      (name) => readings[name] === null,
    ),
    ...(["return", "supply"] as const)
      .filter(
        (side) => readings[`${side}WetBulbF`] === null && readings[`${side}RelativeHumidityPct`] === null,
      )
      .map((side) => `${side}WetBulbF` as const),
  ];
  if (missing.length > 0) return unknown(missing.flatMap((name) => fieldOfReading(key, name) ?? []));
  return derive({ elevationFt: context.elevationFt }, ({ elevationFt }) =>
    deliveredCapacity({ elevationFt, readings, systematicShare: context.limits["startup.systematicShare"] }),
  );
}

/** What the system as left should give at the conditions of these readings. */
function expected(context: JobContext, readings: Readings, key: StartupStageKey): Derived<Capacity> {
  const { startup_record: startup, equipment_selection: selection, control_setup: controls } = context.inputs;
  const { elevationFt } = context;
  const system = chosenSystem(
    context.model,
    startup.leftCapacitySetting ?? selection.capacitySetting,
    controls.colderCoilCooling,
  );
  const returnDbF = readings.returnDryBulbF?.value ?? null;
  const returnWbF = readings.returnWetBulbF?.value ?? null;
  const returnRhPct = readings.returnRelativeHumidityPct?.value ?? null;
  const wetBulb =
    returnWbF !== null
      ? derive({ returnWbF }, (given) => given.returnWbF)
      : derive(
          { elevationFt, returnDbF, returnRhPct },
          (given) =>
            moistAir({
              dryBulbF: given.returnDbF,
              relativeHumidityPct: given.returnRhPct,
              pressurePsia: standardPressurePsia(given.elevationFt),
            }).wetBulbF as number,
        );
  const outdoorDbF = startup.outdoorDbF;
  const airflowCfm = readings.airflowCfm?.value ?? null;
  return andThen(system, (chosen) =>
    andThen(wetBulb, (indoorWbF) => {
      if (returnDbF === null || outdoorDbF === null || airflowCfm === null || elevationFt === null)
        return unknown([]);
      return capacityOf(
        { ...chosen, stage: key },
        { indoorDbF: returnDbF, indoorWbF, outdoorDbF, airflowCfm, elevationFt },
      );
    }),
  );
}

function engineStage(
  context: JobContext,
  measured: MeasuredStage,
  designCfm: number | null,
  airflow: AirflowAsSet,
): StartupStage {
  const { key } = measured;
  const isFull = key === "second";
  // The load asks an airflow of full capacity only; the first stage is held against what it was set to.
  const first = valueIfKnown(airflow.first);
  const inputs = context.inputs.startup_record;
  const capacity = valueIfKnown(measured.expected);
  const targets = context.model?.data.targets;
  return {
    stage: NAMES[key],
    mode: "cooling",
    steadyMinutes: inputs[`${key}StabilisedMin`],
    readings: readingsOf(key, inputs, context.instruments),
    condensateMinutes: inputs[`${key}CondensateMin`],
    expected: {
      totalBtuh: capacity?.totalBtuh ?? null,
      sensibleBtuh: capacity?.sensibleBtuh ?? null,
      moistureLbPerH: capacity?.moistureLbPerH ?? null,
    },
    makerSuperheatF: inputs.targetSuperheatF ?? targets?.superheatF ?? null,
    makerSubcoolingF: inputs.targetSubcoolingF ?? targets?.subcoolingF ?? null,
    designCfm: isFull ? designCfm : (first?.airflowCfm ?? null),
    designStaticInWc: isFull
      ? context.inputs.airflow_setup.designExternalStaticInWc
      : (first?.externalStaticInWc ?? null),
    maximumStaticInWc: context.model?.data.limits.maxExternalStaticInWc ?? null,
    nameplateVolts: isFull ? inputs.nameplateVolts : null,
    ratedAmps: isFull ? inputs.ratedAmps : null,
  };
}
