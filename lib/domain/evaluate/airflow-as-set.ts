import {
  airflowFromStaticTable,
  ductCoefficient,
  type FanPoint,
  fanOperatingPoint,
} from "@/lib/engineering/airflow";
import type { EquipmentModel } from "../catalog";
import type { AirflowSetupInputs } from "../stages/airflow-setup";
import { type Derived, known, unknown } from "./context";
import { andThen, derive } from "./derive";

export type SetAirflow = {
  readonly setting: string;
  readonly airflowCfm: number;
  readonly externalStaticInWc: number;
  readonly powerW: number | null;
};

export type AirflowAsSet = { readonly first: Derived<SetAirflow>; readonly second: Derived<SetAirflow> };

/**
 * What the chosen fan settings give on this job's ducts: full capacity at the static expected for it, first
 * stage where its own fan curve meets the same ducts (Δp ∝ cfm²).
 */
export function airflowAsSet(model: EquipmentModel | null, inputs: AirflowSetupInputs): AirflowAsSet {
  const table = model ? fanTable(model) : null;
  if (table === null) return { first: unknown(["equipmentModelId"]), second: unknown(["equipmentModelId"]) };
  const second = derive(
    {
      secondStageAirflowSetting: inputs.secondStageAirflowSetting,
      designExternalStaticInWc: inputs.designExternalStaticInWc,
    },
    ({ secondStageAirflowSetting: setting, designExternalStaticInWc: externalStaticInWc }): SetAirflow => ({
      setting,
      externalStaticInWc,
      airflowCfm: airflowFromStaticTable({ table, setting, externalStaticInWc }),
      powerW: powerAt(table, setting, externalStaticInWc),
    }),
  );
  return {
    second,
    first: andThen(second, (full) => onSameDucts(table, inputs.firstStageAirflowSetting, full)),
  };
}

/** The operating point of one more setting on the ducts that the full-capacity point describes. */
export function onSameDucts(
  table: readonly FanPoint[],
  setting: string | null,
  full: SetAirflow,
): Derived<SetAirflow> {
  if (setting === null) return unknown(["firstStageAirflowSetting"]);
  if (setting === full.setting) return known(full);
  const point = derive({}, () =>
    fanOperatingPoint({ table, setting, ductCoefficient: ductCoefficient(full) }),
  );
  return andThen(point, (found) =>
    found.kind === "on the table"
      ? known({
          setting,
          airflowCfm: found.airflowCfm,
          externalStaticInWc: found.externalStaticInWc,
          powerW: found.powerW,
        })
      : unknown(
          [],
          `With setting “${setting}” these ducts lie ${found.side} that the fan table lists (${found.listedStaticInWc} in. w.c.).`,
        ),
  );
}

/** The model's fan table as the engineering module reads it. */
export function fanTable(model: EquipmentModel): readonly FanPoint[] {
  return model.fan.map(({ airflowSetting, ...row }) => ({ setting: airflowSetting, ...row }));
}

function powerAt(table: readonly FanPoint[], setting: string, externalStaticInWc: number): number | null {
  const exact = table.find(
    (point) => point.setting === setting && point.externalStaticInWc === externalStaticInWc,
  );
  if (exact) return exact.powerW;
  const found = derive({}, () => {
    const airflowCfm = airflowFromStaticTable({ table, setting, externalStaticInWc });
    return fanOperatingPoint({
      table,
      setting,
      ductCoefficient: ductCoefficient({ airflowCfm, externalStaticInWc }),
    });
  });
  return found.known && found.value.kind === "on the table" ? found.value.powerW : null;
}
