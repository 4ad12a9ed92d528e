import { moistAir, standardPressurePsia } from "@/lib/engineering/air";
import { type BalancePoint, balancePoint } from "@/lib/engineering/equipment";
import type { Finding, Verdict } from "@/lib/engineering/findings";
import { outdoorAirLoad } from "@/lib/engineering/load";
import { type Evaluation, evaluateJob } from "../evaluate";
import { type Capacity, capacityOf, chosenSystem } from "../evaluate/capacity";
import { type Derived, type JobContext, valueIfKnown } from "../evaluate/context";
import { stageCount } from "../evaluate/controls";
import { andThen, derive } from "../evaluate/derive";
import { heatingAt } from "../evaluate/heating";
import { worstVerdict } from "../jobs";
import { type Sensitivity, sensitivityOf } from "./sensitivity";

/** What an option gives, each figure known or with the reason why not. */
export type OptionFigures = {
  readonly design: Derived<Capacity>;
  /** At the outdoor temperature of the design dew point, in the stage that runs in mild weather. */
  readonly wetMild: Derived<Capacity>;
  /** Water outdoor air brings through the fan at the design dew point, lb/h. */
  readonly ventilationLbPerH: Derived<number>;
  readonly airflowCfm: number | null;
  readonly cfmPerTon: number | null;
  readonly staticInWc: number | null;
  readonly lowestRhPct: number | null;
  readonly heating: Derived<BalancePoint>;
  readonly selection: Verdict | null;
  readonly airflow: Verdict | null;
  readonly shortfalls: readonly Finding[];
  readonly sensitivities: readonly Sensitivity[];
};

/** Everything the side-by-side table says of one option, from the same evaluation as the stage records. */
export function optionFigures(context: JobContext): OptionFigures {
  const evaluation = evaluateJob(context);
  const { results, findings } = evaluation;
  const second = valueIfKnown(results.airflow.second);
  return {
    design: results.equipment.full,
    wetMild: wetMildCapacity(context, evaluation),
    ventilationLbPerH: ventilationWater(context),
    airflowCfm: second?.airflowCfm ?? null,
    cfmPerTon: results.cfmPerTon.set,
    staticInWc: second?.externalStaticInWc ?? null,
    lowestRhPct: results.lowestRhPct,
    heating: heatingBalance(context),
    selection: worstVerdict(findings.equipment_selection),
    airflow: worstVerdict(findings.airflow_setup),
    shortfalls: [...findings.equipment_selection, ...findings.airflow_setup].filter(
      (one) => one.verdict === "falls short",
    ),
    sensitivities: sensitivityOf(context, evaluation),
  };
}

/** In mild weather a unit with two stages runs in its first one. */
function wetMildCapacity(context: JobContext, { results }: Evaluation): Derived<Capacity> {
  const { load_summary: load, equipment_selection: selection, control_setup: controls } = context.inputs;
  const stage = stageCount(context) === 2 && results.airflow.first.known ? "first" : "second";
  const system = chosenSystem(context.model, selection.capacitySetting, controls.colderCoilCooling);
  return andThen(system, (chosen) =>
    andThen(results.airflow[stage], ({ airflowCfm }) =>
      andThen(results.equipment.indoorWbF, (indoorWbF) =>
        andThen(
          derive(
            {
              indoorCoolingDbF: load.indoorCoolingDbF,
              wetMildDbF: load.wetMildDbF,
              elevationFt: context.elevationFt,
            },
            (given) => given,
          ),
          ({ indoorCoolingDbF: indoorDbF, wetMildDbF: outdoorDbF, elevationFt }) =>
            capacityOf({ ...chosen, stage }, { indoorDbF, indoorWbF, outdoorDbF, airflowCfm, elevationFt }),
        ),
      ),
    ),
  );
}

/** Water that mechanical outdoor air brings in at the design dew point, lb/h. */
export function ventilationWater({ elevationFt, inputs }: JobContext): Derived<number> {
  const { ventilationCfm, wetMildDewPointF, wetMildDbF, indoorCoolingDbF, indoorCoolingRhPct } =
    inputs.load_summary;
  return derive(
    { ventilationCfm, wetMildDewPointF, wetMildDbF, indoorCoolingDbF, indoorCoolingRhPct, elevationFt },
    (given): number => {
      const pressurePsia = standardPressurePsia(given.elevationFt);
      return outdoorAirLoad({
        airflowCfm: given.ventilationCfm,
        outdoor: moistAir({
          dryBulbF: given.wetMildDbF,
          dewPointF: given.wetMildDewPointF,
          pressurePsia,
        }),
        indoor: moistAir({
          dryBulbF: given.indoorCoolingDbF,
          relativeHumidityPct: given.indoorCoolingRhPct,
          pressurePsia,
        }),
      }).moistureLbPerH;
    },
  );
}

function heatingBalance({ model, inputs }: JobContext): Derived<BalancePoint> {
  const { heatingBtuh, outdoorHeatingDbF, indoorHeatingDbF } = inputs.load_summary;
  const { capacitySetting } = inputs.equipment_selection;
  return derive(
    {
      capacityAt17FBtuh: heatingAt(model, capacitySetting, 17),
      capacityAt47FBtuh: heatingAt(model, capacitySetting, 47),
      heatingBtuh,
      outdoorHeatingDbF,
      indoorHeatingDbF,
    },
    (given) =>
      balancePoint({
        capacityAt17FBtuh: given.capacityAt17FBtuh,
        capacityAt47FBtuh: given.capacityAt47FBtuh,
        designLoadBtuh: given.heatingBtuh,
        designF: given.outdoorHeatingDbF,
        zeroLoadF: given.indoorHeatingDbF,
      }),
  );
}
