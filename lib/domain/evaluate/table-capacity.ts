import { type MoistAir, moistAir, standardPressurePsia } from "@/lib/engineering/air";
import { airAfterCoil, type Performance, type PerformanceAxis } from "@/lib/engineering/equipment";
import { waterFromLatent } from "@/lib/engineering/moisture";
import type { Capacity, Conditions } from "./capacity-shape";

/** Figures for other air, or for another flow of it, say nothing of the air that leaves. */
const OF_THE_AIR: readonly PerformanceAxis[] = ["enteringDbF", "enteringWbF", "airflowCfm"];

/** What the maker's table gives, with the air that leaves the coil by the balance of its heat and water. */
export function tableCapacity(found: Performance, at: Conditions): Capacity {
  const { totalBtuh, sensibleBtuh, latentBtuh, sensibleRatio } = found;
  const moistureLbPerH = waterFromLatent(latentBtuh, at.indoorDbF);
  const isOfThisAir = found.notVaried.every(({ axis }) => !OF_THE_AIR.includes(axis));
  const leaving = isOfThisAir ? balance(found, at, moistureLbPerH) : null;
  return {
    ...{ totalBtuh, sensibleBtuh, latentBtuh, sensibleRatio, moistureLbPerH },
    leavingDewPointF: leaving?.dewPointF ?? null,
    leavingDbF: leaving?.dryBulbF ?? null,
    coilF: null,
    from: "maker's table",
    remarks: found.notVaried.map(
      (axis) =>
        `The table is for ${axis.tableValue} ${axis.unit} only; the job has ${Math.round(axis.askedValue)} ${axis.unit}.`,
    ),
  };
}

function balance(found: Performance, at: Conditions, moistureLbPerH: number): MoistAir | null {
  return airAfterCoil({
    entering: moistAir({
      dryBulbF: at.indoorDbF,
      wetBulbF: at.indoorWbF,
      pressurePsia: standardPressurePsia(at.elevationFt),
    }),
    airflowCfm: at.airflowCfm,
    totalBtuh: found.totalBtuh,
    moistureLbPerH,
  });
}
