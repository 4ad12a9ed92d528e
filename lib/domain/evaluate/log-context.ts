import type { LogContext } from "@/lib/engineering/logs";
import { type JobContext, valueIfKnown } from "./context";
import type { Evaluation } from "./results";

/**
 * What a log of this job is held against: its humidity limit, the sensible capacity delivered at startup (as set where it was not
 * measured), and the load summary's design point. `null` while limit or elevation is missing.
 */
export function logContextOf(context: JobContext, { results }: Evaluation): LogContext | null {
  const { elevationFt } = context;
  const load = context.inputs.load_summary;
  if (load.humidityLimitPct === null || elevationFt === null) return null;
  const { outdoorCoolingDbF: outdoorF, sensibleCoolingBtuh: sensibleBtuh } = load;
  return {
    humidityLimitPct: load.humidityLimitPct,
    elevationFt,
    deliveredSensibleBtuhByStage: capacities(context, results),
    design: outdoorF === null || sensibleBtuh === null || outdoorF < 60 ? null : { outdoorF, sensibleBtuh },
  };
}

function capacities({ model }: JobContext, results: Evaluation["results"]): readonly number[] | null {
  const of = (key: "first" | "second", asSet: number | undefined) => {
    const measured = results.startup.stages.find((stage) => stage.key === key);
    const delivered = measured === undefined ? null : valueIfKnown(measured.delivered);
    return delivered?.sensibleBtuh.value ?? asSet ?? null;
  };
  const { equipment } = results;
  const full = of("second", valueIfKnown(equipment.full)?.sensibleBtuh);
  const first = of("first", valueIfKnown(equipment.first)?.sensibleBtuh);
  if (full === null) return null;
  if (model?.compressorKind === "single_speed") return [full];
  return first === null ? null : [first, full];
}
