export type { Refused } from "./channel-values";
export { filesIn, type NamedFile } from "./files-in";
export { headerFingerprint } from "./fingerprint";
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
export { type LogPreview, PREVIEW_BYTES, previewLog, tryMapping } from "./preview";
export { type LogFile, type LogGap, readLogFile, readLogSteps } from "./read-log-file";
export { suggestMapping } from "./suggest-mapping";
export { type Table, tableOf } from "./table";
export { FILE_REFUSALS, type FileRefusal, textOfFile } from "./text-of-file";
export type { Duplicate } from "./time-order";
export { usualIntervalMin } from "./usual-interval";
export { type ClockChange, findZone } from "./zone-clock";
