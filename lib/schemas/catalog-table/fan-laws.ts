import type { FanRow } from "@/lib/domain/catalog";
import type { ReadRow, Refuse, RefusedCell } from "./refused-cell";

type Line = { readonly row: number | null; readonly values: FanRow };

/**
 * A fan moves no more air against more static (fan laws: a falling curve on the usable side), and at one
 * static it has one airflow. The cell at the higher static is named; either of the two may be the wrong one.
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
  const refused: RefusedCell[] = [];
  const kept: Line[] = [];
  for (const line of sorted) {
    const before = kept.at(-1);
    const fault = before === undefined || line.row === null ? null : faultBetween(before.values, line.values);
    if (fault === null || line.row === null) kept.push(line);
    else refused.push(refuse(line.row, fault.quantity, fault.reason, fault.fix));
  }
  const [only] = kept;
  if (kept.length === 1 && only !== undefined && only.row !== null) {
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
