import type { FieldProblem } from "../problems";
import type { StageKey } from "./keys";

type Values = Readonly<Record<string, unknown>>;

/** Readings that contradict each other or cannot be. Each problem names the field and the fix. */
export function refusePhysics(stage: StageKey, inputs: Values): readonly FieldProblem[] {
  if (stage === "load_summary") return refuseLoad(inputs);
  if (stage === "startup_record")
    return [...refuseStartup(inputs, "first"), ...refuseStartup(inputs, "second")];
  if (stage === "control_setup") return refuseControls(inputs);
  return [];
}

function refuseLoad(inputs: Values): FieldProblem[] {
  const problems: FieldProblem[] = [];
  if (above(inputs, "outdoorCoolingWbF", "outdoorCoolingDbF")) {
    problems.push({
      field: "outdoorCoolingWbF",
      message: "Outdoor wet bulb cannot be above the outdoor temperature. Check which is which.",
    });
  }
  if (above(inputs, "wetMildDewPointF", "wetMildDbF")) {
    problems.push({
      field: "wetMildDewPointF",
      message: "The dew point cannot be above the temperature with it. Check which is which.",
    });
  }
  return problems;
}

function refuseStartup(inputs: Values, stage: "first" | "second"): FieldProblem[] {
  const problems: FieldProblem[] = [];
  for (const place of ["Return", "Supply"] as const) {
    if (above(inputs, `${stage}${place}WbF`, `${stage}${place}DbF`)) {
      problems.push({
        field: `${stage}${place}WbF`,
        message: `${place} wet bulb cannot be above its dry bulb. Wet the wick again and let it settle, or swap the two readings.`,
      });
    }
  }
  if (above(inputs, `${stage}SupplyDbF`, `${stage}ReturnDbF`) && inputs.supplyWarmerConfirmed !== true) {
    problems.push({
      field: `${stage}SupplyDbF`,
      message:
        "Supply air is warmer than return air while cooling. Check that the probes are not swapped and cooling is running; if it is true, tick “Supply is warmer than return, probes checked”.",
    });
  }
  return problems;
}

function refuseControls(inputs: Values): FieldProblem[] {
  if (inputs.fanBetweenCalls !== "minutes per hour" || num(inputs, "fanBetweenCallsMinPerH") !== 0) return [];
  return [
    {
      field: "fanBetweenCallsMinPerH",
      message: "Enter how many minutes each hour the fan runs between calls, or choose “off”.",
    },
  ];
}

function above(inputs: Values, upper: string, lower: string): boolean {
  const high = num(inputs, upper);
  const low = num(inputs, lower);
  return high !== null && low !== null && high > low;
}

function num(inputs: Values, key: string): number | null {
  const value = inputs[key];
  return typeof value === "number" ? value : null;
}
