import type { Verdict } from "@/lib/engineering/findings";
import type { JobFacts } from "../facts";
import type { StageKey } from "../stages/keys";
import { type JobContext, valueIfKnown } from "./context";
import type { JobResults } from "./results";

/** The flat row that views across jobs compare. */
export function jobFacts(
  context: JobContext,
  results: JobResults,
  verdicts: Readonly<Record<StageKey, Verdict | null>>,
): JobFacts {
  const {
    load_summary: load,
    equipment_selection: selection,
    airflow_setup: airflow,
    control_setup: controls,
  } = context.inputs;
  const { model, log } = context;
  const full = valueIfKnown(results.equipment.full);
  const first = valueIfKnown(results.equipment.first);
  const measured = results.startup.stages.find((one) => one.key === "second");
  const delivered = measured ? valueIfKnown(measured.delivered) : null;
  const total =
    load.sensibleCoolingBtuh === null || load.latentCoolingBtuh === null
      ? null
      : load.sensibleCoolingBtuh + load.latentCoolingBtuh;
  const fanPower = context.inputs.startup_record.secondFanPowerW;
  const firstCfm = valueIfKnown(results.airflow.first)?.airflowCfm ?? null;
  return {
    elevationFt: context.elevationFt,
    floorAreaFt2: load.floorAreaFt2,
    equipmentModelId: model?.id ?? null,
    equipmentFamilyId: model?.familyId ?? null,
    compressorKind: model?.compressorKind ?? null,
    nominalTons: model?.nominalTons ?? null,
    controlModelId: controls.controlModelId,
    capacitySetting: selection.capacitySetting,
    capacityAdjustedByBoard: controls.capacityAdjustmentByBoard,
    colderCoilCooling: controls.colderCoilCooling,
    firstStageAirflowSetting: airflow.firstStageAirflowSetting,
    secondStageAirflowSetting: airflow.secondStageAirflowSetting,
    firstStageStartOffsetF: controls.firstStageStartOffsetF,
    secondStageStartOffsetF: controls.secondStageStartOffsetF,
    minimumCompressorRunMin: controls.minimumCompressorRunMin,
    minimumCompressorRestMin: controls.minimumCompressorRestMin,
    stepBackToFirstStage: controls.stepBackToFirstStage,
    fanRunOnSeconds: controls.fanRunOnAfterCoolingS,
    coolingPastSetpointF: controls.coolingPastSetpointF,
    indoorTemperatureCorrectionF: controls.indoorTemperatureCorrectionF,
    indoorHumidityCorrectionPct: controls.indoorHumidityCorrectionPct,
    fanBetweenCalls: controls.fanBetweenCalls,
    fanMinutesPerHour: controls.fanBetweenCallsMinPerH,
    supplementalDehumidifier:
      selection.dehumidifierPintsPerDay === null ? null : selection.dehumidifierPintsPerDay > 0,
    ventilationCfm: load.ventilationCfm,
    loadTotalBtuh: total,
    loadSensibleBtuh: load.sensibleCoolingBtuh,
    loadLatentBtuh: load.latentCoolingBtuh,
    sizeRatio: full && total ? full.totalBtuh / total : null,
    firstStageCfmPerTon: firstCfm === null || !first ? null : firstCfm / (first.totalBtuh / 12_000),
    secondStageCfmPerTon: results.cfmPerTon.measured ?? results.cfmPerTon.set,
    externalStaticInWc: measured?.externalStaticInWc ?? null,
    fanWattsPerCfm: fanPower !== null && measured?.airflowCfm ? fanPower / measured.airflowCfm : null,
    totalCapacityBtuh: delivered?.totalBtuh.value ?? null,
    sensibleCapacityBtuh: delivered?.sensibleBtuh.value ?? null,
    latentCapacityBtuh: delivered?.latentBtuh.value ?? null,
    sensibleRatio: delivered?.sensibleRatio?.value ?? null,
    moistureRemovalLbPerH: delivered?.moistureLbPerH.value ?? null,
    superheatF: measured ? valueIfKnown(measured.superheatF) : null,
    subcoolingF: measured ? valueIfKnown(measured.subcoolingF) : null,
    livedDryHours: log?.dryHours ?? null,
    livedLoggedHours: log?.loggedHours ?? null,
    shareBetween50And60Pct: log?.share50To60Pct ?? null,
    shareAboveLimitPct: log && log.loggedHours > 0 ? (100 * log.hoursAboveLimit) / log.loggedHours : null,
    meanIndoorDewPointF: log?.meanDewPointF ?? null,
    cyclesPerHour: log?.cyclesPerHour ?? null,
    secondStageSharePct: log?.secondStageSharePct ?? null,
    verdicts,
  };
}
