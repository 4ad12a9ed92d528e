export type { Refused } from "./channel-values";
export {
  COLUMN_UNITS,
  type ColumnUnit,
  DATE_ORDERS,
  type DateOrder,
  type LogMapping,
  logMappingSchema,
  type MappedColumn,
  unitsOf,
} from "./mapping";
export { type LogFile, type LogGap, readLogFile } from "./read-log-file";
export { suggestMapping } from "./suggest-mapping";
export { type Table, tableOf } from "./table";
export { FILE_REFUSALS, type FileRefusal, textOfFile } from "./text-of-file";
export type { Duplicate } from "./time-order";
export type { ClockChange } from "./zone-clock";
