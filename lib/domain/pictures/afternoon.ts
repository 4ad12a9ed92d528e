import type { TimelineMinute } from "@/lib/engineering/controls";
import type { Evaluation, JobContext } from "../evaluate";
import { hotAfternoon } from "../evaluate/controls";
import { compressorAfternoon } from "../evaluate/second-stage";

const STAGE = { 1: "first stage", 2: "second stage" } as const;

type Run = { readonly fromMin: number; readonly toMin: number; readonly stage: (typeof STAGE)[1 | 2] };

/** The hot design afternoon under the settings entered; `null` until they and the capacity are known. */
export function afternoonPicture(context: JobContext, { results }: Evaluation) {
  const house = hotAfternoon(context, results.equipment);
  const timeline = compressorAfternoon(context, results.equipment);
  if (!house || !timeline) return null;
  return {
    roomF: timeline.series.map(({ minute, indoorF }) => ({ atMin: minute, dryBulbF: indoorF })),
    setpointF: [{ atMin: 0, setpointF: house.setpointF }],
    runs: runsOf(timeline.series),
    endMin: house.durationMin,
    gapAfterMin: 1,
  };
}

/** Minutes of one stage joined to runs. */
function runsOf(series: readonly TimelineMinute[]): readonly Run[] {
  const runs: Run[] = [];
  for (const { minute, stage } of series) {
    if (stage === 0) continue;
    const last = runs.at(-1);
    if (last && last.toMin === minute && last.stage === STAGE[stage]) {
      runs[runs.length - 1] = { ...last, toMin: minute + 1 };
    } else runs.push({ fromMin: minute, toMin: minute + 1, stage: STAGE[stage] });
  }
  return runs;
}
