import type { FanRow } from "@/lib/domain/catalog";
import type { ReadRow, Refuse, RefusedCell } from "./refused-cell";

type Line = { readonly row: number | null; readonly values: FanRow };

/**
 * A fan moves no more air against more static (fan laws: a falling curve on the usable side), and at one
 * static it has one airflow. The fewest lines that disagree with the others are named; of two the one at the higher static.
 */
export function refusedFanCells(
  rows: readonly ReadRow<FanRow>[],
  existing: readonly FanRow[],
  refuse: Refuse,
): readonly RefusedCell[] {
  const lines: readonly Line[] = [...existing.map((values) => ({ row: null, values })), ...rows];
  const settings = [...new Set(lines.map(({ values }) => values.airflowSetting))];
  return settings.flatMap((setting) =>
    refusedOfSetting(
      lines.filter(({ values }) => values.airflowSetting === setting),
      refuse,
    ),
  );
}

function refusedOfSetting(lines: readonly Line[], refuse: Refuse): readonly RefusedCell[] {
  const sorted = lines.toSorted(
    (a, b) => a.values.externalStaticInWc - b.values.externalStaticInWc || (a.row ?? -1) - (b.row ?? -1),
  );
  const kept = new Set(mostThatFall(sorted));
  const refused: RefusedCell[] = [];
  for (const [at, line] of sorted.entries()) {
    if (line.row === null || kept.has(line)) continue;
    const before = sorted.slice(0, at).findLast((other) => kept.has(other));
    const after = sorted.slice(at + 1).find((other) => kept.has(other));
    const fault =
      (before && faultBetween(before.values, line.values)) ??
      (after && faultBetween(line.values, after.values));
    if (fault) refused.push(refuse(line.row, fault.quantity, fault.reason, fault.fix));
  }
  const [only] = kept;
  if (kept.size === 1 && only !== undefined && only.row !== null) {
    refused.push(
      refuse(
        only.row,
        "airflowSetting",
        `“${only.values.airflowSetting}” has one usable line; a curve needs two.`,
        "Add its line at another static, or correct the setting's name.",
      ),
    );
  }
  return refused;
}

/**
 * The largest part of the lines, by static, in which none rises: one wrong line is refused, wherever it stands, not all
 * beside it. Lines already in the catalog stay. Of equal parts the one that keeps lower statics.
 */
function mostThatFall(sorted: readonly Line[]): readonly Line[] {
  const weight = (line: Line) => (line.row === null ? sorted.length + 1 : 1);
  // Of each pair there may be, so without the words of what is wrong between two.
  const fits = ({ values: before }: Line, { values: after }: Line) =>
    after.externalStaticInWc !== before.externalStaticInWc && after.airflowCfm <= before.airflowCfm;
  // From each line on: how much can be kept when it is.
  const worth: number[] = [];
  for (const [at, line] of [...sorted.entries()].toReversed()) {
    let rest = 0;
    for (let index = at + 1; index < sorted.length; index++) {
      const [other, more] = [sorted[index], worth[index] ?? 0];
      if (more > rest && other !== undefined && fits(line, other)) rest = more;
    }
    worth[at] = weight(line) + rest;
  }
  const kept: Line[] = [];
  let left = Math.max(0, ...worth);
  for (const [at, line] of sorted.entries()) {
    const before = kept.at(-1);
    if (worth[at] !== left || (before !== undefined && !fits(before, line))) continue;
    kept.push(line);
    left -= weight(line);
  }
  return kept;
}

function faultBetween(
  before: FanRow,
  now: FanRow,
): { readonly quantity: string; readonly reason: string; readonly fix: string } | null {
  const at = `${before.externalStaticInWc} in. w.c.`;
  if (now.externalStaticInWc === before.externalStaticInWc) {
    return {
      quantity: "externalStaticInWc",
      reason: `“${now.airflowSetting}” already has a line at ${at}.`,
      fix: "Keep one of the two, or let the block replace the whole table.",
    };
  }
  if (now.airflowCfm <= before.airflowCfm) return null;
  return {
    quantity: "airflowCfm",
    reason: `${cfm(now)} at ${now.externalStaticInWc} in. w.c. is more than ${cfm(before)} at ${at}: airflow rises with static.`,
    fix: "A fan moves less air against more static: check both lines, and whether columns are swapped.",
  };
}

function cfm({ airflowCfm }: FanRow): string {
  return `${Math.round(airflowCfm).toLocaleString("en-US")} cfm`;
}
