import type { EquipmentModel, FanRow, PerformanceRow } from "@/lib/domain/catalog";
import type { JobContext } from "@/lib/domain/evaluate";
import { asId } from "@/lib/domain/ids";
import { limitsInForce } from "@/lib/domain/limits";
import { emptyStage, STAGES, type StageInputs } from "@/lib/domain/stages";

/** One line of a table: then nothing is interpolated and every figure can be worked out by hand. */
const row = (capacitySetting: string, totalBtuh: number, sensibleBtuh: number): PerformanceRow => ({
  capacitySetting,
  mode: "cooling",
  outdoorDbF: 95,
  enteringWbF: 63,
  enteringDbF: 75,
  airflowCfm: 1_000,
  totalBtuh,
  sensibleBtuh,
  powerW: null,
});

/** Blows the same against any static pressure, so that the duct curve changes nothing. */
const fan = (airflowSetting: string, airflowCfm: number): readonly FanRow[] =>
  [0.1, 0.5, 0.9].map((externalStaticInWc) => ({
    airflowSetting,
    externalStaticInWc,
    airflowCfm,
    powerW: null,
  }));

/** Full capacity 36,000 Btu/h (three tons), first stage 24,000 Btu/h (two tons). */
export const TWO_STAGE: EquipmentModel = {
  id: asId<"equipment model">("11111111-1111-4111-8111-111111111111"),
  familyId: "22222222-2222-4222-8222-222222222222",
  version: 1,
  maker: "Invented",
  name: "Two-stage",
  modelNumber: "T-2",
  compressorKind: "two_stage",
  nominalTons: 3,
  refrigerant: "R-410A",
  demoData: true,
  data: {
    ratedAirflowCfm: 1_200,
    capacitySettings: [{ name: "full", tons: 3, firstStageTable: "first" }],
    limits: { maxExternalStaticInWc: 0.9, minimumAirflowCfm: null, electricHeatMinimumAirflowCfm: null },
    lineSet: null,
    targets: { subcoolingF: 10, superheatF: null },
    heldCoil: null,
  },
  performance: [row("full", 36_000, 27_000), row("first", 24_000, 18_000)],
  fan: [...fan("low", 900), ...fan("high", 1_200)],
};

export type SomeInputs = { readonly [S in keyof StageInputs]?: Partial<StageInputs[S]> };

/** A job of a two-stage system with the given inputs; everything else is empty. */
export function aJobContext(some: SomeInputs, change: Partial<JobContext> = {}): JobContext {
  const inputs = Object.fromEntries(
    STAGES.map((stage) => [stage, { ...emptyStage(stage), ...some[stage] }]),
  ) as unknown as StageInputs;
  return {
    elevationFt: 0,
    inputs,
    model: TWO_STAGE,
    controlStages: 2,
    instruments: [],
    limits: limitsInForce({}),
    weather: null,
    log: null,
    forecast: null,
    lived: null,
    measuredOn: null,
    ...change,
  };
}

export const DESIGNED: SomeInputs = {
  load_summary: {
    sensibleCoolingBtuh: 24_000,
    latentCoolingBtuh: 6_500,
    indoorCoolingDbF: 75,
    indoorCoolingRhPct: 50,
    outdoorCoolingDbF: 95,
    outdoorCoolingWbF: 77,
    humidityLimitPct: 55,
  },
  equipment_selection: { equipmentModelId: TWO_STAGE.id, capacitySetting: "full" },
  airflow_setup: {
    firstStageAirflowSetting: "low",
    secondStageAirflowSetting: "high",
    designExternalStaticInWc: 0.5,
  },
};
