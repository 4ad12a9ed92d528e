import { standardPressurePsia } from "@/lib/engineering/air";
import { equipmentRules, type HumidityCapability, humidityCapability } from "@/lib/engineering/equipment";
import { type Finding, finding, notMeasured } from "@/lib/engineering/findings";
import { textBeside } from "@/lib/engineering/limit-text";
import { equipmentSelectionFields } from "../stages/equipment-selection";
import { heldSystem } from "./capacity";
import { type Derived, type JobContext, unknown } from "./context";
import { andThen, derive } from "./derive";
import type { EquipmentResults } from "./equipment";

/** Lowest indoor humidity the system as set can hold at design. Only a held coil has a model from which it can be solved. */
export function lowestHumidity(
  context: JobContext,
  equipment: EquipmentResults,
): Derived<HumidityCapability> {
  const { load_summary: load, control_setup: controls } = context.inputs;
  const { model, elevationFt } = context;
  const held = model?.data.heldCoil;
  if (!model || !held) return unknown(model ? [] : ["equipmentModelId"]);
  const { indoorCoolingDbF, outdoorCoolingDbF, sensibleCoolingBtuh, latentCoolingBtuh } = load;
  return andThen(equipment.airflow, ({ cfm }) =>
    derive(
      {
        capacitySetting: equipment.tons,
        elevationFt,
        indoorCoolingDbF,
        outdoorCoolingDbF,
        sensibleCoolingBtuh,
        latentCoolingBtuh,
      },
      (given) =>
        humidityCapability({
          indoorDbF: given.indoorCoolingDbF,
          pressurePsia: standardPressurePsia(given.elevationFt),
          airflowCfm: cfm,
          system: heldSystem(
            model.data,
            held,
            {
              tons: given.capacitySetting,
              nominalTons: model.nominalTons,
              colderCoil: controls.colderCoilCooling === true,
            },
            given.outdoorCoolingDbF,
          ),
          sensibleLoadBtuh: given.sensibleCoolingBtuh,
          latentLoadBtuh: given.latentCoolingBtuh,
        }),
    ),
  );
}

/** That humidity against the limit promised. Nothing for equipment whose table cannot tell. */
export function humidityCapabilityFindings(
  context: JobContext,
  lowest: Derived<HumidityCapability>,
): readonly Finding[] {
  const rule = equipmentRules.humidityCapability;
  const limitPct = context.inputs.load_summary.humidityLimitPct;
  if (context.model && !context.model.data.heldCoil) return [];
  if (!lowest.known) {
    const fields = lowest.missing.filter((name) => name in equipmentSelectionFields);
    const said = notMeasured(rule, fields, "Complete the load summary, the selection and the airflow setup.");
    return [lowest.problem === null ? said : { ...said, statement: lowest.problem }];
  }
  if (limitPct === null) return [notMeasured(rule, [], "Enter the humidity limit in the load summary.")];
  const found = lowest.value;
  const inputs = ["equipmentModelId", "capacitySetting"];
  const remedy = "Choose a lower airflow or capacity setting, a colder coil, or plan a dehumidifier.";
  if (found.outcome === "latent load not carried") {
    return [
      finding(rule, {
        verdict: "falls short",
        statement: "At design loads the coil removes less water than comes in, however humid the house gets.",
        nextStep: remedy,
        inputs,
      }),
    ];
  }
  const rhPct = found.relativeHumidityPct;
  const meets = rhPct <= limitPct;
  // Whether the sensible load is carried is the sizing's verdict; here it is only said.
  const how =
    found.outcome === "holds"
      ? `, running ${(100 * found.runShare).toFixed(0)} % of the time`
      : ", running all the time and a little short of the sensible load";
  return [
    finding(rule, {
      verdict: meets ? "meets" : "falls short",
      statement: `At design loads the house settles at ${textBeside(rhPct, [limitPct], 0)} % relative humidity${how}; ${limitPct} % is promised.`,
      figures: [{ label: "Lowest indoor humidity", value: rhPct, unit: "%", decimals: 0 }],
      nextStep: meets ? null : remedy,
      inputs,
    }),
  ];
}
