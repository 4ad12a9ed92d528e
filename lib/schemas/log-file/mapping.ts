import { z } from "zod";
import { LOG_CHANNELS } from "@/lib/engineering/logs";

export const DATE_ORDERS = ["year-month-day", "day-month-year", "month-day-year"] as const;
export type DateOrder = (typeof DATE_ORDERS)[number];

/** Units a column may be written in. The three times are run time within one interval; "share" is 0 to 1. */
export const COLUMN_UNITS = ["°F", "°C", "%", "fraction", "share", "seconds", "minutes", "on/off"] as const;
export type ColumnUnit = (typeof COLUMN_UNITS)[number];

const TEMPERATURE: readonly ColumnUnit[] = ["°F", "°C"];
const HUMIDITY: readonly ColumnUnit[] = ["%", "fraction"];
const RUNNING: readonly ColumnUnit[] = ["share", "%", "seconds", "minutes", "on/off"];

/** The units a channel can be given in. */
export function unitsOf(channel: (typeof LOG_CHANNELS)[number]): readonly ColumnUnit[] {
  if (channel.endsWith("Share")) return RUNNING;
  return channel.endsWith("RhPct") ? HUMIDITY : TEMPERATURE;
}

const columnSchema = z
  .strictObject({
    heading: z.string().min(1).max(200),
    channel: z.enum(LOG_CHANNELS),
    unit: z.enum(COLUMN_UNITS),
  })
  .refine(({ channel, unit }) => unitsOf(channel).includes(unit), {
    error: "this channel cannot be in that unit",
    path: ["unit"],
  });

/** How one source's files are read; remembered per source. */
export const logMappingSchema = z.strictObject({
  version: z.literal(1),
  /** Column with date and time, or with the date when `timeOfDayHeading` names another. */
  timeHeading: z.string().min(1).max(200),
  timeOfDayHeading: z.string().min(1).max(200).nullable(),
  /** null: found out from the file. */
  dateOrder: z.enum(DATE_ORDERS).nullable(),
  columns: z
    .array(columnSchema)
    .min(1)
    .max(LOG_CHANNELS.length)
    .refine((columns) => new Set(columns.map(({ channel }) => channel)).size === columns.length, {
      error: "two columns are mapped to the same channel",
    }),
  /** Reads only rows in which this column has this value, for files of several houses. */
  onlyWhere: z.strictObject({ heading: z.string().min(1).max(200), value: z.string().max(200) }).nullable(),
});
export type LogMapping = z.infer<typeof logMappingSchema>;
export type MappedColumn = LogMapping["columns"][number];
