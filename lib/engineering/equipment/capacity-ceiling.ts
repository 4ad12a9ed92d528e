import { ImpossibleStateError, OutOfRangeError } from "../errors";
import { type Btuh, btuh, requireRange } from "../units";

/** Most cooling the compressor gives at one outdoor temperature, all settings at full. */
export type CeilingPoint = { readonly outdoorDbF: number; readonly capacityBtuh: number };

/**
 * Capacity ceiling at an outdoor temperature and capacity setting.
 *
 * @param points - Maker's full capacity, outdoor −40 to 150 °F rising, capacity 1,000 to 1,000,000 Btu/h and not rising with
 * outdoor
 * temperature (more heat to reject against a warmer condenser never gives more).
 * @param outdoorDbF - Outdoor dry bulb, °F, −40 to 150 and within the points.
 * @param settingPct - Capacity setting, percent of full. 10 to 100.
 * @returns Ceiling, Btu/h, linear between points.
 * @throws {@link OutOfRangeError} outside the points or ranges.
 * @throws {@link ImpossibleStateError} for points out of order or rising with outdoor temperature.
 * @see The maker's capacity data by outdoor temperature; monotone by the second law (physics).
 */
export function capacityCeilingBtuh(
  points: readonly CeilingPoint[],
  outdoorDbF: number,
  settingPct: number,
): Btuh {
  requireRange("settingPct", settingPct, "%", 10, 100);
  requireRange("outdoorDbF", outdoorDbF, "°F", -40, 150);
  for (const [index, point] of points.entries()) {
    requireRange("points.outdoorDbF", point.outdoorDbF, "°F", -40, 150);
    requireRange("points.capacityBtuh", point.capacityBtuh, "Btu/h", 1_000, 1e6);
    const previous = points[index - 1];
    if (previous === undefined) continue;
    if (point.outdoorDbF <= previous.outdoorDbF || point.capacityBtuh > previous.capacityBtuh) {
      throw new ImpossibleStateError(
        `points must rise in outdoorDbF and not rise in capacityBtuh; check the entry at ${point.outdoorDbF} °F`,
        ["points"],
      );
    }
  }
  const first = points[0];
  const last = points.at(-1);
  if (first === undefined || last === undefined) {
    throw new ImpossibleStateError("Give at least one capacity by outdoor temperature.", ["points"]);
  }
  const above = points.find((point) => point.outdoorDbF >= outdoorDbF);
  const below = points.findLast((point) => point.outdoorDbF <= outdoorDbF);
  if (above === undefined || below === undefined) {
    throw new OutOfRangeError("outdoorDbF", outdoorDbF, "°F", first.outdoorDbF, last.outdoorDbF);
  }
  const span = above.outdoorDbF - below.outdoorDbF;
  const share = span === 0 ? 0 : (outdoorDbF - below.outdoorDbF) / span;
  const full = below.capacityBtuh + share * (above.capacityBtuh - below.capacityBtuh);
  return btuh((full * settingPct) / 100);
}
