import { balancePoint, equipmentRules } from "@/lib/engineering/equipment";
import { isEngineeringError } from "@/lib/engineering/errors";
import { type Finding, finding, notMeasured } from "@/lib/engineering/findings";
import type { EquipmentModel } from "../catalog";
import type { JobContext } from "./context";

/** Outdoor temperatures of the two rated heating points, °F. */
const RATED_F = [17, 47] as const;

/** Where the heat pump alone stops carrying the house, and whether the auxiliary heat covers the rest. */
export function heatingFindings(context: JobContext): readonly Finding[] {
  const { load_summary: load, equipment_selection: selection } = context.inputs;
  const rule = equipmentRules.balancePoint;
  const [at17, at47] = RATED_F.map((outdoorF) =>
    heatingAt(context.model, selection.capacitySetting, outdoorF),
  );
  if (context.model && at17 === null && at47 === null) return [];
  const { heatingBtuh, outdoorHeatingDbF, indoorHeatingDbF } = load;
  const { auxiliaryHeatKw } = selection;
  if (
    at17 == null ||
    at47 == null ||
    !heatingBtuh ||
    outdoorHeatingDbF === null ||
    indoorHeatingDbF === null
  ) {
    return [
      notMeasured(
        rule,
        ["equipmentModelId"],
        "Choose equipment with heating data and enter the heating load with its design temperatures.",
      ),
    ];
  }
  try {
    const found = balancePoint({
      capacityAt17FBtuh: at17,
      capacityAt47FBtuh: at47,
      designLoadBtuh: heatingBtuh,
      designF: outdoorHeatingDbF,
      zeroLoadF: indoorHeatingDbF,
    });
    const needed = found.auxiliaryAtDesignKw;
    const words = `The heat pump alone carries the house down to ${found.balancePointF.toFixed(0)} °F; at ${outdoorHeatingDbF} °F it lacks ${needed.toFixed(1)} kW`;
    return [
      finding(rule, {
        verdict:
          auxiliaryHeatKw === null
            ? needed === 0
              ? "meets"
              : "not measured"
            : auxiliaryHeatKw >= needed
              ? "meets"
              : "falls short",
        statement:
          auxiliaryHeatKw === null
            ? `${words}.`
            : `${words} and ${auxiliaryHeatKw} kW of auxiliary heat are installed.`,
        figures: [
          { label: "Balance point", value: found.balancePointF, unit: "°F", decimals: 0 },
          { label: "Auxiliary heat needed", value: needed, unit: "kW", decimals: 1 },
        ],
        nextStep: auxiliaryHeatKw === null && needed > 0 ? "Enter the auxiliary heat installed." : null,
        inputs: ["auxiliaryHeatKw"],
      }),
    ];
  } catch (error) {
    if (!isEngineeringError(error)) throw error;
    return [
      {
        ...notMeasured(rule, ["equipmentModelId"], "Check the heating load and the model's heating data."),
        statement: error.message,
      },
    ];
  }
}

function heatingAt(
  model: EquipmentModel | null,
  capacitySetting: string | null,
  outdoorF: number,
): number | null {
  const row = model?.performance.find(
    (one) => one.mode === "heating" && one.capacitySetting === capacitySetting && one.outdoorDbF === outdoorF,
  );
  return row?.totalBtuh ?? null;
}
