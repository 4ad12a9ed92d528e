import type { Verdict } from "@/lib/engineering/findings";
import type { StageKey } from "./stages/keys";

/**
 * What views across jobs compare: one flat row a job, copied from its signed records.
 * `null`: not known, or its record is not signed yet.
 */
export type JobFacts = {
  readonly elevationFt: number | null;
  readonly floorAreaFt2: number | null;
  readonly equipmentModelId: string | null;
  readonly equipmentFamilyId: string | null;
  readonly compressorKind: string | null;
  readonly nominalTons: number | null;
  readonly controlModelId: string | null;
  readonly capacitySetting: string | null;
  readonly capacityAdjustedByBoard: boolean | null;
  readonly colderCoilCooling: boolean | null;
  readonly firstStageAirflowSetting: string | null;
  readonly secondStageAirflowSetting: string | null;
  readonly firstStageStartOffsetF: number | null;
  readonly secondStageStartOffsetF: number | null;
  readonly minimumCompressorRunMin: number | null;
  readonly minimumCompressorRestMin: number | null;
  readonly stepBackToFirstStage: boolean | null;
  readonly fanRunOnSeconds: number | null;
  readonly coolingPastSetpointF: number | null;
  readonly indoorTemperatureCorrectionF: number | null;
  readonly indoorHumidityCorrectionPct: number | null;
  readonly fanBetweenCalls: string | null;
  readonly fanMinutesPerHour: number | null;
  readonly supplementalDehumidifier: boolean | null;
  readonly ventilationCfm: number | null;
  readonly loadTotalBtuh: number | null;
  readonly loadSensibleBtuh: number | null;
  readonly loadLatentBtuh: number | null;
  readonly sizeRatio: number | null;
  readonly firstStageCfmPerTon: number | null;
  readonly secondStageCfmPerTon: number | null;
  readonly externalStaticInWc: number | null;
  readonly fanWattsPerCfm: number | null;
  readonly totalCapacityBtuh: number | null;
  readonly sensibleCapacityBtuh: number | null;
  readonly latentCapacityBtuh: number | null;
  readonly sensibleRatio: number | null;
  readonly moistureRemovalLbPerH: number | null;
  readonly superheatF: number | null;
  readonly subcoolingF: number | null;
  readonly livedDryHours: number | null;
  readonly livedLoggedHours: number | null;
  readonly shareBetween50And60Pct: number | null;
  readonly shareAboveLimitPct: number | null;
  readonly meanIndoorDewPointF: number | null;
  readonly cyclesPerHour: number | null;
  readonly secondStageSharePct: number | null;
  readonly verdicts: Readonly<Record<StageKey, Verdict | null>>;
};
