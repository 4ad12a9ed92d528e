import { flowPlateCorrection } from "@/lib/engineering/airflow";
import type { Finding } from "@/lib/engineering/findings";
import {
  type SanityQuestion,
  type StartupSite,
  type StartupStage,
  sanityQuestions,
  startupFindings,
} from "@/lib/engineering/startup";
import type { StartupRecordInputs } from "../stages/startup-record";
import type { AirflowAsSet } from "./airflow-as-set";
import { type JobContext, valueIfKnown } from "./context";
import { type MeasuredStage, measuredStage } from "./measured-stage";
import { fieldOfInput, isNeverAsked } from "./startup-fields";
import { readingsOf, type StartupStageKey } from "./startup-readings";

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
    findings: [
      ...startupFindings({ ...site, stages }, context.limits)
        .filter(
          (one) => one.verdict !== "not measured" || !one.inputs.some((input) => isNeverAsked(input, keys)),
        )
        .map((one) => ({
          ...one,
          inputs: [...new Set(one.inputs.flatMap((input) => fieldOfInput(input, keys) ?? []))],
        })),
      ...keys.flatMap((key) => plateFinding(key, inputs)),
    ],
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

/** What a flow plate shows is not what flows in use. A hood, which shows no plate's airflow, needs no correction. */
function plateFinding(key: StartupStageKey, inputs: StartupRecordInputs): readonly Finding[] {
  const plateCfm = inputs[`${key}PlateCfm`];
  if (inputs[`${key}AirflowMethod`] !== "flow plate" || plateCfm === null) return [];
  const found = flowPlateCorrection({
    stage: NAMES[key],
    fieldPrefix: "",
    plateCfm,
    // A supply static of none or below the room's pressure corrects nothing: it is asked for.
    supplyStaticInWc: positive(inputs[`${key}SupplyStaticInWc`]),
    supplyStaticWithPlateInWc: inputs[`${key}PlateSupplyStaticInWc`],
    airflowCfm: inputs[`${key}AirflowCfm`],
  });
  return [{ ...found, inputs: found.inputs.map((input) => PLATE_FIELDS[input]?.(key) ?? input) }];
}

const PLATE_FIELDS: Readonly<Record<string, (key: StartupStageKey) => string>> = {
  plateCfm: (key) => `${key}PlateCfm`,
  supplyStaticInWc: (key) => `${key}SupplyStaticInWc`,
  supplyStaticWithPlateInWc: (key) => `${key}PlateSupplyStaticInWc`,
  airflowCfm: (key) => `${key}AirflowCfm`,
};

function positive(value: number | null): number | null {
  return value !== null && value >= 0.01 ? value : null;
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
    delivered: valueIfKnown(measured.delivered),
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
