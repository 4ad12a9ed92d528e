import { moistAir, standardPressurePsia } from "@/lib/engineering/air";
import { equipmentRules, stageDropTransient } from "@/lib/engineering/equipment";
import { type Finding, finding } from "@/lib/engineering/findings";
import type { AirflowAsSet } from "./airflow-as-set";
import { heldSystem } from "./capacity";
import { type JobContext, valueIfKnown } from "./context";
import type { EquipmentResults } from "./equipment";

/**
 * What stepping back to the first stage does on a compressor that holds a coil temperature: the fan follows at once, the
 * compressor over the model's settling time. For information; nothing where it does not apply or is not known yet.
 */
export function stageDropFindings(
  context: JobContext,
  airflow: AirflowAsSet,
  equipment: EquipmentResults,
): readonly Finding[] {
  const { model, elevationFt } = context;
  const { indoorCoolingDbF, outdoorCoolingDbF } = context.inputs.load_summary;
  const { colderCoilCooling, stepBackToFirstStage } = context.inputs.control_setup;
  const held = model?.data.heldCoil;
  const first = valueIfKnown(airflow.first);
  const second = valueIfKnown(airflow.second);
  const indoorWbF = valueIfKnown(equipment.indoorWbF);
  if (!model || !held || !first || !second || equipment.tons === null || indoorWbF === null) return [];
  if (elevationFt === null || indoorCoolingDbF === null || outdoorCoolingDbF === null) return [];
  if (stepBackToFirstStage !== true || held.settlingMin < 1 || first.airflowCfm >= second.airflowCfm)
    return [];
  const drop = stageDropTransient({
    entering: moistAir({
      dryBulbF: indoorCoolingDbF,
      wetBulbF: indoorWbF,
      pressurePsia: standardPressurePsia(elevationFt),
    }),
    system: heldSystem(
      model.data,
      held,
      { tons: equipment.tons, nominalTons: model.nominalTons, colderCoil: colderCoilCooling === true },
      outdoorCoolingDbF,
    ),
    airflowBeforeCfm: second.airflowCfm,
    airflowAfterCfm: first.airflowCfm,
    settlingMinutes: held.settlingMin,
    shape: "first-order",
    minutes: Math.ceil(held.settlingMin),
  });
  const coldestF = Math.min(...drop.minutes.map((minute) => minute.adpF));
  const minutes = held.settlingMin.toFixed(0);
  return [
    finding(equipmentRules.stageDrop, {
      verdict: null,
      statement: `When the airflow drops from ${second.airflowCfm.toFixed(0)} to ${first.airflowCfm.toFixed(0)} cfm at first stage, the compressor needs ${minutes} minutes to come down; meanwhile the coil falls to ${coldestF.toFixed(1)} °F (settled ${drop.after.adpF.toFixed(1)} °F) and takes ${drop.extraMoistureLb.toFixed(2)} lb more water than the settled first stage.`,
      figures: [
        { label: "Coldest coil", value: coldestF, unit: "°F", decimals: 1 },
        { label: "Water beyond the settled stage", value: drop.extraMoistureLb, unit: "lb", decimals: 2 },
      ],
      nextStep: drop.minutes.some((minute) => minute.atFrostLimit)
        ? "The coil meets its frost limit on the way: raise the first-stage airflow."
        : null,
      inputs: ["stepBackToFirstStage"],
    }),
  ];
}
