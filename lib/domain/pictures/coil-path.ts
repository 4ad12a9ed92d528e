import { moistAir, standardPressurePsia } from "@/lib/engineering/air";
import type { Evaluation, JobContext } from "../evaluate";
import { valueIfKnown } from "../evaluate/context";
import { attempt } from "../evaluate/guard";

type Point = { readonly dryBulbF: number; readonly grainsPerLb: number };

/** Curves drawn behind the states, % relative humidity. */
const CURVES_PCT = [20, 40, 60, 80, 100] as const;
const FROM_F = 30;
const TO_F = 110;
const STEP_F = 2;

/** Room air into the coil and supply air out of it at design; `null` until the room's air is known. */
export function coilPathPicture({ elevationFt, inputs }: JobContext, { results }: Evaluation) {
  const { indoorCoolingDbF, indoorCoolingRhPct, humidityLimitPct } = inputs.load_summary;
  if (elevationFt === null || indoorCoolingDbF === null || indoorCoolingRhPct === null) return null;
  return attempt(
    () => {
      const pressurePsia = standardPressurePsia(elevationFt);
      const curve = (relativeHumidityPct: number): readonly Point[] =>
        Array.from({ length: (TO_F - FROM_F) / STEP_F + 1 }, (_, index) =>
          point(moistAir({ dryBulbF: FROM_F + STEP_F * index, relativeHumidityPct, pressurePsia })),
        );
      const entering = point(
        moistAir({ dryBulbF: indoorCoolingDbF, relativeHumidityPct: indoorCoolingRhPct, pressurePsia }),
      );
      const full = valueIfKnown(results.equipment.full);
      const leaving =
        full === null || full.leavingDbF === null || full.leavingDewPointF === null
          ? null
          : point(
              moistAir({
                dryBulbF: full.leavingDbF,
                // Saturated air leaves at its dew point; rounding must not put it above.
                dewPointF: Math.min(full.leavingDewPointF, full.leavingDbF),
                pressurePsia,
              }),
            );
      return {
        humidityCurves: CURVES_PCT.map((percent) => ({
          relativeHumidityPercent: percent,
          points: curve(percent),
        })),
        limit:
          humidityLimitPct === null
            ? null
            : { label: `the house's limit of ${humidityLimitPct} %`, points: curve(humidityLimitPct) },
        states: [
          { key: "entering", label: "Room", shape: "dot" as const, tone: "b" as const, ...entering },
          ...(leaving
            ? [
                {
                  key: "leaving",
                  label: "Leaving the coil",
                  shape: "square" as const,
                  tone: "a" as const,
                  ...leaving,
                },
              ]
            : []),
        ],
        coilPath: leaving ? [entering, leaving] : [],
      };
    },
    () => null,
  );
}

function point({ dryBulbF, grainsPerLb }: Point): Point {
  return { dryBulbF, grainsPerLb };
}
