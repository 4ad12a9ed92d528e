import { moistAir, standardPressurePsia } from "@/lib/engineering/air";
import type { Finding } from "@/lib/engineering/findings";
import { infiltrationCreditCfm } from "@/lib/engineering/load";
import {
  type ConditionEntry,
  LB_PER_PINT,
  lbPerHFromPintsPerDay,
  moistureFindings,
  moistureRules,
  PUBLISHED_SOURCES,
} from "@/lib/engineering/moisture";
import type { LoadSummaryInputs } from "../stages/load-summary";
import { type JobContext, valueIfKnown } from "./context";
import { derive } from "./derive";
import type { EquipmentResults } from "./equipment";

/**
 * Water in against water out, at the cooling design condition and in wet mild weather without a cooling call. The fan's part
 * between calls is judged at control setup, so its finding is left out here.
 */
export function moistureBalanceFindings(
  context: JobContext,
  equipment: EquipmentResults,
): readonly Finding[] {
  const { load_summary: load, equipment_selection: selection } = context.inputs;
  const leakageCfm = averageLeakageCfm(load);
  const shared = {
    indoor: indoorAir(context),
    outdoorAirCfm: load.ventilationCfm === null ? null : load.ventilationCfm + (leakageCfm ?? 0),
    household: {
      people: load.occupants,
      personLbPerH: PUBLISHED_SOURCES.personPintsPerHour * LB_PER_PINT,
      householdPintsPerDay: load.householdPintsPerDay,
      groundPintsPerDay: load.groundPintsPerDay,
    },
    dehumidifierLbPerH: dehumidifierLbPerH(context),
  };
  const found = moistureFindings(
    {
      design: {
        ...shared,
        outdoor: outdoorAir(context, load.outdoorCoolingDbF, { wetBulbF: load.outdoorCoolingWbF }),
        coolingRemovalLbPerH: meanRemovalLbPerH(context, equipment),
      },
      wetMild: {
        ...shared,
        outdoor: outdoorAir(context, load.wetMildDbF, { dewPointF: load.wetMildDewPointF }),
      },
      partLoad: null,
    },
    context.limits,
  );
  const remark = ` Each person counts ${PUBLISHED_SOURCES.personPintsPerHour.toFixed(2)} pint/h (published)${leakageCfm === null ? "; leakage is not known and not counted" : ""}.`;
  const rated = selection.dehumidifierPintsPerDay;
  return found
    .filter((one) => one.ruleId !== moistureRules.reEvaporation.id)
    .map((one) => ({
      ...one,
      statement: one.verdict === "not measured" ? one.statement : `${one.statement}${remark}`,
      nextStep: one.verdict === "not measured" ? nextStepFor(context, rated) : one.nextStep,
      inputs:
        rated === null ? ["dehumidifierPintsPerDay"] : rated === 0 ? [] : ["dehumidifierAtHousePintsPerDay"],
    }));
}

function nextStepFor({ inputs }: JobContext, rated: number | null): string {
  const { occupants, householdPintsPerDay, groundPintsPerDay, ventilationCfm } = inputs.load_summary;
  if (
    occupants === null ||
    householdPintsPerDay === null ||
    groundPintsPerDay === null ||
    ventilationCfm === null
  )
    return "Enter people, water from cooking and bathing, damp ground and outdoor air in the load summary (0 where there is none).";
  if (rated === null) return "Enter the supplemental dehumidifier (0 when there is none).";
  if (dehumidifierUnknown(inputs.equipment_selection))
    return "Enter the dehumidifier's capacity at the indoor design air, from the maker's data; the rating is for more humid air.";
  return "Complete the design conditions, the selection and the airflow setup.";
}

/** A dehumidifier counts with its capacity at the house's air only: the rating is for more humid air. */
function dehumidifierLbPerH({ inputs }: JobContext): number | null {
  const { dehumidifierPintsPerDay: rated, dehumidifierAtHousePintsPerDay: atHouse } =
    inputs.equipment_selection;
  if (rated === 0) return 0;
  return rated === null || atHouse === null ? null : lbPerHFromPintsPerDay(atHouse);
}

function dehumidifierUnknown(selection: JobContext["inputs"]["equipment_selection"]): boolean {
  return selection.dehumidifierPintsPerDay !== 0 && selection.dehumidifierAtHousePintsPerDay === null;
}

/** Water the cooling takes at design, mean over the hours: it runs as long as the sensible load asks, at most all the time. */
function meanRemovalLbPerH(context: JobContext, { full }: EquipmentResults): number | null {
  const capacity = valueIfKnown(full);
  const load = context.inputs.load_summary.sensibleCoolingBtuh;
  if (!capacity || load === null) return null;
  const runShare = capacity.sensibleBtuh > load ? load / capacity.sensibleBtuh : 1;
  return capacity.moistureLbPerH * runShare;
}

function averageLeakageCfm({
  leakageCfm50,
  windShieldingFactor,
  houseHeightFt,
}: LoadSummaryInputs): number | null {
  return valueIfKnown(
    derive({ leakageCfm50, windShieldingFactor, houseHeightFt }, (given): number =>
      infiltrationCreditCfm(given),
    ),
  );
}

function indoorAir({ elevationFt, inputs }: JobContext): ConditionEntry["indoor"] {
  const { indoorCoolingDbF, indoorCoolingRhPct } = inputs.load_summary;
  if (elevationFt === null || indoorCoolingDbF === null || indoorCoolingRhPct === null) return null;
  return moistAir({
    dryBulbF: indoorCoolingDbF,
    relativeHumidityPct: indoorCoolingRhPct,
    pressurePsia: standardPressurePsia(elevationFt),
  });
}

function outdoorAir(
  { elevationFt }: JobContext,
  dryBulbF: number | null,
  moisture: { readonly wetBulbF: number | null } | { readonly dewPointF: number | null },
): ConditionEntry["outdoor"] {
  if (elevationFt === null || dryBulbF === null) return null;
  const place = { dryBulbF, pressurePsia: standardPressurePsia(elevationFt) };
  if ("wetBulbF" in moisture)
    return moisture.wetBulbF === null ? null : moistAir({ ...place, wetBulbF: moisture.wetBulbF });
  return moisture.dewPointF === null ? null : moistAir({ ...place, dewPointF: moisture.dewPointF });
}
