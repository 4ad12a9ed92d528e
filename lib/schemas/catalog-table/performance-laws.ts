import type { PerformanceRow } from "@/lib/domain/catalog";
import { performanceKey } from "@/lib/domain/catalog-changes";
import type { ReadRow, Refuse, RefusedCell } from "./refused-cell";

/** What must hold in a row and between rows: physics, and one answer for one condition. */
export function refusedPerformanceCells(
  rows: readonly ReadRow<PerformanceRow>[],
  existing: readonly PerformanceRow[],
  refuse: Refuse,
): readonly RefusedCell[] {
  const there = new Set(existing.map(performanceKey));
  const lines = new Map<string, { readonly row: number; readonly same: string }>();
  return rows.flatMap(({ row, values }): RefusedCell[] => {
    const { enteringWbF, enteringDbF, sensibleBtuh, totalBtuh } = values;
    if (sensibleBtuh !== null && sensibleBtuh > totalBtuh) {
      return [
        refuse(
          row,
          "sensibleBtuh",
          `Sensible ${btuh(sensibleBtuh)} is above the total of ${btuh(totalBtuh)}.`,
          "Sensible is a part of the total: check both, and whether the columns are swapped.",
        ),
      ];
    }
    if (enteringWbF !== null && enteringWbF > enteringDbF) {
      return [
        refuse(
          row,
          "enteringWbF",
          `Wet bulb ${enteringWbF} °F is above dry bulb ${enteringDbF} °F.`,
          "Air's wet bulb is never above its dry bulb: check both, and whether the columns are swapped.",
        ),
      ];
    }
    const condition = performanceKey(values);
    if (there.has(condition)) {
      return [
        refuse(
          row,
          "totalBtuh",
          "The model already has a row at this condition.",
          "Leave the row out, or let the block replace the whole table.",
        ),
      ];
    }
    const earlier = lines.get(condition);
    const same = `${totalBtuh} ${sensibleBtuh} ${values.powerW}`;
    if (earlier === undefined) {
      lines.set(condition, { row, same });
      return [];
    }
    const where = refuse(earlier.row, "totalBtuh", "", "").line;
    return [
      refuse(
        row,
        "totalBtuh",
        earlier.same === same
          ? `The same row stands in line ${where}.`
          : `Line ${where} gives another capacity at this condition: two tables for one model.`,
        "Keep one of the two, or name their capacity settings apart.",
      ),
    ];
  });
}

function btuh(value: number): string {
  return `${Math.round(value).toLocaleString("en-US")} Btu/h`;
}
