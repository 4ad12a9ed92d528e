import { cellOf } from "./check-table";
import type { TableMapping } from "./mapping";
import type { Block } from "./read-block";

/** What a model's rows may be named by. */
export type NamedSettings = readonly {
  readonly name: string;
  readonly firstStageTable?: string | null | undefined;
}[];

/** The names a model's rows go by: its settings, and the first stage where it is printed apart. */
export function rowNames(settings: NamedSettings): readonly string[] {
  return [
    ...new Set(
      settings.flatMap(({ name, firstStageTable }) => [name, ...(firstStageTable ? [firstStageTable] : [])]),
    ),
  ];
}

/** Settings named in a block that the model does not have: no job would ever find their rows. */
export function strangeSettings(
  block: Block,
  mapping: TableMapping,
  settings: NamedSettings,
): readonly string[] {
  const known = new Set(rowNames(settings));
  const named = new Set(block.rows.map((row) => cellOf(row, "capacitySetting", mapping).trim()));
  return [...named].filter((name) => name !== "" && !known.has(name));
}

/** The block and its mapping with the rows of one setting under another name. */
export function renameSetting(
  block: Block,
  mapping: TableMapping,
  from: string,
  to: string,
): { readonly block: Block; readonly mapping: TableMapping } {
  const mapped = mapping.capacitySetting;
  if (mapped === undefined) return { block, mapping };
  const { column } = mapped;
  if (column === null)
    return { block, mapping: { ...mapping, capacitySetting: { ...mapped, constant: to } } };
  const rows = block.rows.map((row) => ({
    ...row,
    cells: row.cells.map((cell, at) => (at === column && cell.trim() === from ? to : cell)),
  }));
  return { block: { ...block, rows }, mapping };
}
