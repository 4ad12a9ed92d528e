import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import type { CoilAtFlow } from "@/lib/engineering/equipment";
import type { YearPlan } from "@/lib/engineering/simulation/year-plan";

/** The year as the C++ of year.cpp ran it: median ms a turn, and sums to compare. */
export type CppYear = {
  readonly ms: number;
  readonly wetHours: number;
  readonly drainedLb: number;
  readonly coilSensibleBtu: number;
  readonly starts: number;
};

/**
 * Compiles year.cpp with -O2 and runs the plan in it.
 *
 * @returns `null` where no g++ is to be found.
 */
export function yearInCpp(plan: YearPlan, turns: number): CppYear | null {
  if (spawnSync("g++", ["--version"]).status !== 0) return null;
  const folder = mkdtempSync(path.join(tmpdir(), "dewledger-year-"));
  try {
    const program = path.join(folder, "year");
    const planFile = path.join(folder, "plan.bin");
    execFileSync("g++", ["-O2", "-o", program, path.join(import.meta.dirname, "year.cpp")], {
      stdio: ["ignore", "ignore", "inherit"],
    });
    writeFileSync(planFile, new Uint8Array(Float64Array.from(planNumbers(plan)).buffer));
    const said = execFileSync(program, [planFile, String(turns)], { encoding: "utf8" });
    const [ms, wetHours, drainedLb, coilSensibleBtu, starts] = said.trim().split(" ").map(Number);
    const numbers = { ms, wetHours, drainedLb, coilSensibleBtu, starts };
    if (Object.values(numbers).some((value) => value === undefined || !Number.isFinite(value))) {
      throw new Error(`year.cpp said ${said}`);
    }
    return numbers as CppYear;
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/** In the order in which readPlan of year.cpp reads them. */
function planNumbers(plan: YearPlan): number[] {
  const { house, system, controls, settings, dehumidifier } = plan;
  const coil = (one: CoilAtFlow): number[] => [
    one.pressurePsia,
    one.heldTemperatureF,
    one.fixedApproachF,
    one.approachSlopeFPerBtuh,
    one.frostLimitF,
    one.frostHumidityRatio,
    one.dryAirLbPerH,
    one.bypassFactor,
    one.contactLbPerH,
  ];
  const held = plan.stages.flatMap((stage) => (stage.table === null ? [stage] : []));
  return [
    plan.hours,
    plan.stepsPerHour,
    plan.stages.length,
    plan.pressurePsia,
    plan.ventilationCfm,
    plan.pauseAboveRatio,
    plan.airLb,
    plan.bufferLb,
    plan.bufferLbPerH,
    plan.stackCfm2PerF,
    plan.windCfm2PerMph2,
    plan.referenceDeficit,
    plan.humidityLimitPct,
    house.conductanceBtuhPerF,
    house.airCapacitanceBtuPerF,
    house.massCapacitanceBtuPerF,
    house.massCouplingBtuhPerF,
    house.radiantShare,
    controls.coolingSetpointF,
    controls.heatingSetpointF,
    controls.dryAbovePct,
    system.noCoolingBelowF,
    system.heatPumpAt17FBtuh,
    system.heatPumpAt47FBtuh,
    system.auxiliaryKw,
    system.wattsPerBtuhAt82F,
    system.wattsPerBtuhAt95F,
    system.settlingMin,
    system.startTimeConstantS,
    system.coilHoldsLb,
    system.firstEvaporationLbPerH,
    settings.firstStageStartOffsetF,
    settings.secondStageStartOffsetF,
    settings.minimumCompressorRunMin,
    settings.minimumCompressorRestMin,
    settings.stepBackToFirstStage ? 1 : 0,
    settings.fanRunOnAfterCoolingS,
    settings.coolingPastSetpointF,
    settings.fanBetweenCalls === "on" ? 2 : settings.fanBetweenCalls === "off" ? 0 : 1,
    settings.fanBetweenCallsMinPerH ?? 0,
    dehumidifier === null ? 0 : 1,
    dehumidifier?.powerW ?? 0,
    dehumidifier?.startAbovePct ?? 0,
    dehumidifier?.stopBelowPct ?? 0,
    plan.dehumidifierLbPerHPerRatio,
    ...held.flatMap((stage) => [
      ...coil(stage.coil),
      ...coil(stage.atFrost),
      stage.share,
      stage.minimumBtuh,
      stage.fanW,
    ]),
    ...plan.outdoorF,
    ...plan.outdoorRatio,
    ...plan.windMph,
    ...plan.sunBtuh,
    ...plan.ceilingBtuh,
    ...plan.ventilationHour,
    ...plan.gainsBtuh,
    ...plan.moistureLbPerH,
  ];
}
