export { type CheckedTable, cellOf, checkTable } from "./check-table";
export { cellsToFill, fillDown } from "./fill-down";
export { mappingProblems, suggestMapping, type TableMapping, tableMappingSchema } from "./mapping";
export {
  quantitiesOf,
  TABLE_KIND_NAMES,
  TABLE_KINDS,
  type TableKind,
  type TableQuantity,
} from "./quantities";
export { type Block, type BlockRefusal, type BlockRow, MOST_CHARACTERS, readBlock } from "./read-block";
export type { RefusedCell } from "./refused-cell";
export { type NamedSettings, renameSetting, rowNames, strangeSettings } from "./setting-names";
export { fanLines } from "./statics-across";
export { ourUnit, type UnitFamily, unitsOf } from "./units";
