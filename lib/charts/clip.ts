import type { AirPoint } from "./psychrometric-input";

/** The part of a curve inside the axes, ending exactly on their edges. Curves rise with dry bulb. */
export function clipped(
  points: readonly AirPoint[],
  [minF = 0, maxF = 0]: readonly number[],
  [, maxGrains = 0]: readonly number[],
): readonly AirPoint[] {
  const kept: AirPoint[] = [];
  points.forEach((point, index) => {
    const before = points[index - 1];
    if (before !== undefined) {
      const crossings = [
        (minF - before.dryBulbF) / (point.dryBulbF - before.dryBulbF),
        (maxF - before.dryBulbF) / (point.dryBulbF - before.dryBulbF),
        (maxGrains - before.grainsPerLb) / (point.grainsPerLb - before.grainsPerLb),
      ];
      for (const share of crossings.filter((s) => s > 0 && s < 1).sort((a, b) => a - b)) {
        const edge = between(before, point, share);
        if (isInside(edge)) kept.push(edge);
      }
    }
    if (isInside(point)) kept.push(point);
  });
  return kept;

  function isInside({ dryBulbF, grainsPerLb }: AirPoint) {
    const slack = 1e-9;
    return dryBulbF >= minF - slack && dryBulbF <= maxF + slack && grainsPerLb <= maxGrains + slack;
  }
}

function between(a: AirPoint, b: AirPoint, share: number): AirPoint {
  return {
    dryBulbF: a.dryBulbF + share * (b.dryBulbF - a.dryBulbF),
    grainsPerLb: a.grainsPerLb + share * (b.grainsPerLb - a.grainsPerLb),
  };
}

/** The corner an area over the curve turns at: the top right one when the curve left through the top, else its end. */
export function cornerBetween(end: AirPoint | undefined, maxF: number, maxGrains: number): AirPoint {
  return end !== undefined && end.grainsPerLb < maxGrains - 1e-9
    ? end
    : { dryBulbF: maxF, grainsPerLb: maxGrains };
}
