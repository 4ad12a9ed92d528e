import { moistAir, standardPressurePsia } from "@/lib/engineering/air";
import { type EquipmentKind, sizingFindings } from "@/lib/engineering/equipment";
import type { Finding } from "@/lib/engineering/findings";
import type { CompressorKind } from "../catalog";
import { equipmentSelectionFields } from "../stages/equipment-selection";
import type { AirflowAsSet } from "./airflow-as-set";
import { type Capacity, capacityOf, chosenSystem } from "./capacity";
import { type Derived, type JobContext, known, unknown, valueIfKnown } from "./context";
import { andThen, derive } from "./derive";
import { byTable, withFields } from "./field-names";

export type EquipmentResults = {
  readonly indoorWbF: Derived<number>;
  /** Full capacity at the design conditions. */
  readonly full: Derived<Capacity>;
  readonly first: Derived<Capacity>;
  /** The airflow the full capacity is computed with, and why that one. */
  readonly airflow: Derived<{ readonly cfm: number; readonly isRated: boolean }>;
  readonly tons: number | null;
};

const KINDS: Readonly<Record<CompressorKind, EquipmentKind>> = {
  single_speed: "single speed",
  two_stage: "two-stage",
  variable_speed: "variable speed",
  coil_temperature_held: "variable speed",
};

/** Capacity of the selected equipment at design conditions, with the airflow as set. */
export function equipmentResults(context: JobContext, airflow: AirflowAsSet): EquipmentResults {
  const { model, elevationFt } = context;
  const load = context.inputs.load_summary;
  const selection = context.inputs.equipment_selection;
  const controls = context.inputs.control_setup;
  const { indoorCoolingDbF, indoorCoolingRhPct, outdoorCoolingDbF } = load;
  const indoorWbF = derive(
    { indoorCoolingDbF, indoorCoolingRhPct, elevationFt },
    (given) =>
      moistAir({
        dryBulbF: given.indoorCoolingDbF,
        relativeHumidityPct: given.indoorCoolingRhPct,
        pressurePsia: standardPressurePsia(given.elevationFt),
      }).wetBulbF as number,
  );
  const system = chosenSystem(model, selection.capacitySetting, controls.colderCoilCooling);
  const used = airflowUsed(context, airflow);
  const at = (stage: "first" | "second", cfm: Derived<number>): Derived<Capacity> =>
    andThen(system, (chosen) =>
      andThen(cfm, (airflowCfm) =>
        andThen(indoorWbF, (wetBulb) =>
          indoorCoolingDbF === null || outdoorCoolingDbF === null || elevationFt === null
            ? unknown(outdoorCoolingDbF === null ? ["outdoorCoolingDbF"] : [])
            : capacityOf(
                { ...chosen, stage },
                {
                  indoorDbF: indoorCoolingDbF,
                  indoorWbF: wetBulb,
                  outdoorDbF: outdoorCoolingDbF,
                  airflowCfm,
                  elevationFt,
                },
              ),
        ),
      ),
    );
  return {
    indoorWbF,
    airflow: used,
    full: at(
      "second",
      andThen(used, ({ cfm }) => known(cfm)),
    ),
    first: at(
      "first",
      andThen(airflow.first, ({ airflowCfm }) => known(airflowCfm)),
    ),
    tons: model?.data.capacitySettings.find((one) => one.name === selection.capacitySetting)?.tons ?? null,
  };
}

/** Sizing findings of the equipment selection. */
export function equipmentFindings(context: JobContext, results: EquipmentResults): readonly Finding[] {
  const { load_summary: load } = context.inputs;
  const full = valueIfKnown(results.full);
  const sizing = sizingFindings(
    {
      kind: kindOf(context),
      heatPump: context.model?.performance.some((row) => row.mode === "heating") ?? false,
      edition: { name: "Manual S-2014" },
      sensibleLoadBtuh: load.sensibleCoolingBtuh,
      latentLoadBtuh: load.latentCoolingBtuh,
      totalCapacityBtuh: full?.totalBtuh ?? null,
      sensibleCapacityBtuh: full?.sensibleBtuh ?? null,
      leastCapacityBtuh: null,
      heatingDegreeDays65: null,
      coolingDegreeDays50: null,
    },
    context.limits,
  );
  const fieldOf = byTable(
    {
      totalCapacityBtuh: "capacitySetting",
      sensibleCapacityBtuh: "capacitySetting",
      sensibleLoadBtuh: null,
      latentLoadBtuh: null,
    },
    equipmentSelectionFields,
  );
  return withFields(explained(sizing, results), fieldOf);
}

/** The kind of equipment the sizing limits speak of; the strictest before equipment is chosen. */
export function kindOf({ model }: JobContext): EquipmentKind {
  return model ? KINDS[model.compressorKind] : "single speed";
}

/** Says why a capacity is not known, and with which airflow a known one is computed. */
function explained(findings: readonly Finding[], { full, airflow }: EquipmentResults): readonly Finding[] {
  if (!full.known) {
    const problem = full.problem;
    if (problem === null) return findings;
    return findings.map((one) => (one.verdict === "not measured" ? { ...one, statement: problem } : one));
  }
  const rated = airflow.known && airflow.value.isRated;
  const remark = rated
    ? " Computed at the maker's rated airflow, because airflow setup is not done yet."
    : full.value.remarks.map((one) => ` ${one}`).join("");
  return findings.map((one) => ({ ...one, statement: `${one.statement}${remark}` }));
}

function airflowUsed(context: JobContext, { second }: AirflowAsSet): EquipmentResults["airflow"] {
  if (second.known) return known({ cfm: second.value.airflowCfm, isRated: false });
  const chosen = context.inputs.airflow_setup.secondStageAirflowSetting;
  if (chosen !== null || !context.model) return second;
  return known({ cfm: context.model.data.ratedAirflowCfm, isRated: true });
}
