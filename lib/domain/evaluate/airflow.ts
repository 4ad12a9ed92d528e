import { densityRatio } from "@/lib/engineering/air";
import {
  airflowFindings,
  designAirflowCfm,
  type Measured,
  supplyDifferenceF,
} from "@/lib/engineering/airflow";
import type { Finding } from "@/lib/engineering/findings";
import type { AirflowAsSet, SetAirflow } from "./airflow-as-set";
import type { Capacity } from "./capacity";
import { type Derived, type JobContext, valueIfKnown } from "./context";
import { derive } from "./derive";
import type { EquipmentResults } from "./equipment";

/** Airflow that carries the sensible load at the supply temperature difference its sensible ratio asks for, cfm. */
export function designAirflow(context: JobContext): Derived<number> {
  const { sensibleCoolingBtuh, latentCoolingBtuh } = context.inputs.load_summary;
  const { elevationFt } = context;
  return derive({ sensibleCoolingBtuh, latentCoolingBtuh, elevationFt }, (given) => {
    const ratio = given.sensibleCoolingBtuh / (given.sensibleCoolingBtuh + given.latentCoolingBtuh);
    return designAirflowCfm(
      given.sensibleCoolingBtuh,
      supplyDifferenceF(ratio),
      densityRatio(given.elevationFt),
    ) as number;
  });
}

/** What airflow setup says about the settings chosen: figures of the fan table, not measurements. */
export function airflowSetupFindings(
  context: JobContext,
  airflow: AirflowAsSet,
  equipment: EquipmentResults,
  designCfm: Derived<number>,
): readonly Finding[] {
  const inputs = context.inputs.airflow_setup;
  const limits = context.model?.data.limits;
  const stages = [
    {
      name: "Full capacity",
      set: airflow.second,
      capacity: equipment.full,
      design: valueIfKnown(designCfm),
      field: "secondStageAirflowSetting",
    },
    ...(inputs.firstStageAirflowSetting === null
      ? []
      : [
          {
            name: "First stage",
            set: airflow.first,
            capacity: equipment.first,
            design: null,
            field: "firstStageAirflowSetting",
          },
        ]),
  ];
  const found = airflowFindings(
    {
      stages: stages.map((stage) => {
        const set = valueIfKnown(stage.set);
        const capacity = valueIfKnown(stage.capacity);
        return {
          stage: stage.name,
          airflow: fromTable(set?.airflowCfm),
          designCfm: stage.design,
          capacityAsSetBtuh: capacity?.totalBtuh ?? null,
          leavingDewPointF: capacity?.leavingDewPointF ?? null,
          coilTemperature: fromTable(coilOf(capacity)),
          makersMinimumCfm: limits?.minimumAirflowCfm ?? null,
          externalStatic: fromTable(set?.externalStaticInWc),
          designStaticInWc: null,
          maximumStaticInWc: limits?.maxExternalStaticInWc ?? null,
          fanPower: fromTable(set?.powerW ?? undefined),
        };
      }),
      ducts: inputs.totalEffectiveLengthFt === null ? null : ductShare(context),
      electricHeat: electricHeat(context, airflow.second),
    },
    context.limits,
  );
  const fieldOf = (input: string): string | null => {
    const [, index, name] = /^stages\.(\d)\.(.+)$/.exec(input) ?? [];
    if (name === undefined) return OTHER_FIELDS[input] ?? null;
    return name === "externalStatic" ? "designExternalStaticInWc" : (stages[Number(index)]?.field ?? null);
  };
  return found
    .filter((one) => isOfThisStage(one, stages.length))
    .map((one) => ({ ...one, inputs: [...new Set(one.inputs.flatMap((input) => fieldOf(input) ?? []))] }))
    .map((one) =>
      withReason(
        one,
        stages.map((stage) => stage.set),
      ),
    );
}

const OTHER_FIELDS: Readonly<Record<string, string>> = {
  "ducts.totalEffectiveLengthFt": "totalEffectiveLengthFt",
  "electricHeat.airflow": "secondStageAirflowSetting",
};

/** A first stage has no design airflow of its own, and statics without a design static say nothing here. */
function isOfThisStage(one: Finding, stageCount: number): boolean {
  if (one.verdict !== "not measured") return true;
  const missing = one.inputs.join(" ");
  if (/designStaticInWc/.test(missing)) return false;
  if (/coilTemperature/.test(missing)) return false;
  return !(stageCount > 1 && /stages\.1\.designCfm/.test(missing));
}

function withReason(one: Finding, sets: readonly Derived<SetAirflow>[]): Finding {
  if (one.verdict !== "not measured") return one;
  const problem = sets.flatMap((set) => (set.known || set.problem === null ? [] : [set.problem]))[0];
  return problem === undefined ? one : { ...one, statement: problem };
}

function ductShare(context: JobContext) {
  const { airflow_setup: inputs } = context.inputs;
  const parts = [inputs.filterDropInWc, inputs.coilDropInWc, inputs.otherDropInWc];
  const devices = parts.some((part) => part === null)
    ? null
    : parts.reduce<number>((sum, part) => sum + (part ?? 0), 0);
  const total = inputs.designExternalStaticInWc;
  return {
    availableInWc: devices === null || total === null ? null : total - devices,
    totalEffectiveLengthFt: inputs.totalEffectiveLengthFt,
  };
}

function electricHeat(context: JobContext, second: Derived<SetAirflow>) {
  const installed = context.inputs.equipment_selection.auxiliaryHeatKw;
  if (installed === null || installed === 0) return null;
  return {
    airflow: fromTable(valueIfKnown(second)?.airflowCfm),
    electricHeatMinimumCfm: context.model?.data.limits.electricHeatMinimumAirflowCfm ?? null,
  };
}

function coilOf(capacity: Capacity | null): number | undefined {
  return capacity?.coilF ?? undefined;
}

/** A figure of the maker's table is taken as it stands; its uncertainty is judged when it is measured. */
function fromTable(value: number | undefined): Measured | null {
  return value === undefined ? null : { value, uncertainty: 0 };
}
