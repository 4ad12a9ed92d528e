import { type Timeline, thermostatTimeline } from "@/lib/engineering/controls";
import type { JobContext } from "./context";
import { hotAfternoon } from "./controls";
import type { EquipmentResults } from "./equipment";
import { attempt } from "./guard";

/** The compressor's hot design afternoon under these settings; `null` until every setting for it is known. */
export function compressorAfternoon(context: JobContext, equipment: EquipmentResults): Timeline | null {
  const house = hotAfternoon(context, equipment);
  const inputs = context.inputs.control_setup;
  const {
    firstStageStartOffsetF,
    secondStageStartOffsetF,
    minimumCompressorRunMin,
    minimumCompressorRestMin,
  } = inputs;
  const { stepBackToFirstStage, coolingPastSetpointF } = inputs;
  if (house === null || firstStageStartOffsetF === null || secondStageStartOffsetF === null) return null;
  if (minimumCompressorRunMin === null || minimumCompressorRestMin === null || stepBackToFirstStage === null)
    return null;
  if (coolingPastSetpointF === null) return null;
  return attempt(
    () =>
      thermostatTimeline({
        house,
        settings: {
          firstStageStartOffsetF,
          secondStageStartOffsetF,
          minimumCompressorRunMin,
          minimumCompressorRestMin,
          stepBackToFirstStage,
          coolingPastSetpointF,
          // Fan and corrections do not move the stages.
          fanRunOnAfterCoolingS: 0,
          indoorTemperatureCorrectionF: 0,
          indoorHumidityCorrectionPct: 0,
          fanBetweenCalls: "off",
          fanBetweenCallsMinPerH: null,
        },
      }),
    () => null,
  );
}

/** Share of the cooling minutes in second stage on the hot design afternoon, %; `null` with one stage. */
export function secondStageShare(context: JobContext, equipment: EquipmentResults): number | null {
  if (hotAfternoon(context, equipment)?.stages.length !== 2) return null;
  const share = compressorAfternoon(context, equipment)?.summary.secondStageShare ?? null;
  return share === null ? null : 100 * share;
}
