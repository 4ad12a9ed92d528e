import type { TableMapping } from "./mapping";
import type { Block } from "./read-block";

/** What makers print once for several rows. A capacity or a power is never meant for the row below. */
const SAID_ONCE = [
  "capacitySetting",
  "mode",
  "airflowSetting",
  "outdoorDbF",
  "enteringWbF",
  "enteringDbF",
  "airflowCfm",
] as const;

type Place = { readonly row: number; readonly column: number; readonly text: string };

/** Empty cells of settings and conditions below a filled one, as merged cells of a spreadsheet come, with what stands above. */
export function cellsToFill(
  kind: "performance" | "fan",
  block: Block,
  mapping: TableMapping,
): readonly Place[] {
  const columns = SAID_ONCE.flatMap((key) => {
    const column = mapping[key]?.column ?? null;
    // In a fan table the airflow is the answer, not a condition.
    return column === null || (kind === "fan" && key === "airflowCfm") ? [] : [column];
  });
  return columns.flatMap((column) => {
    let above = "";
    return block.rows.flatMap(({ cells }, row): Place[] => {
      const own = cells[column] ?? "";
      if (own !== "") above = own;
      return own === "" && above !== "" ? [{ row, column, text: above }] : [];
    });
  });
}

/** The block with those cells filled. */
export function fillDown(block: Block, places: readonly Place[]): Block {
  const textAt = new Map(places.map(({ row, column, text }) => [`${row} ${column}`, text]));
  return {
    ...block,
    rows: block.rows.map((one, row) => ({
      ...one,
      cells: one.cells.map((cell, column) => textAt.get(`${row} ${column}`) ?? cell),
    })),
  };
}
