import { LOG_RANGES, type LogChannel } from "@/lib/engineering/logs";
import type { ColumnUnit } from "./mapping";
import { NO_NUMBER } from "./plain-number";
import type { Table } from "./table";

/** A row, or one cell of it when `heading` is given, that was not taken, and why. `row` is the line in the file. */
export type Refused = { readonly row: number; readonly heading: string | null; readonly reason: string };

/** Run time may exceed its interval by the logger's rounding; more is a wrong unit. */
const ROUNDING = 0.02;

/**
 * One column as a channel in inch-pound units. A cell that is no number, or lies outside what the channel can be,
 * becomes a gap and is reported; the rest of its row stays.
 */
export function channelValues(
  { cells }: Table,
  order: Uint32Array,
  asked: {
    readonly index: number;
    readonly heading: string;
    readonly channel: LogChannel;
    readonly unit: ColumnUnit;
    readonly intervalMin: number;
  },
): { readonly values: Float64Array; readonly refused: readonly Refused[] } {
  const { index, heading, channel, unit, intervalMin } = asked;
  const [min, max, ipUnit] = LOG_RANGES[channel];
  const isShare = ipUnit === "share";
  const { times, over, plus } = conversion(channel, unit, intervalMin);
  const values = cells.numbers(index, order);
  const refused: Refused[] = [];
  for (let at = 0; at < order.length; at++) {
    const raw = values[at] ?? Number.NaN;
    const value = (raw * times) / over + plus;
    if (value >= min && value <= max) {
      values[at] = value;
      continue;
    }
    if (Number.isNaN(raw)) continue;
    if (isShare && value > 1 && value <= 1 + ROUNDING) values[at] = 1;
    else {
      values[at] = Number.NaN;
      const rowIndex = order[at] ?? 0;
      const cell = cells.cell(rowIndex, index);
      refused.push({
        row: cells.line(rowIndex),
        heading,
        reason:
          raw === NO_NUMBER
            ? `"${cell.trim().slice(0, 40)}" is not a number; correct the cell or leave it empty`
            : `${Number(value.toFixed(2))} ${ipUnit} (${cell.trim().slice(0, 40)} ${unit}) is outside ${min} to ${max} ${ipUnit}${otherUnitHint(raw, unit, min, max)}`,
      });
    }
  }
  return { values, refused };
}

/** What turns a unit into the channel's own: numbers instead of a function, which would be called a million times a year. */
type Conversion = { readonly times: number; readonly over: number; readonly plus: number };
const AS_IT_IS: Conversion = { times: 1, over: 1, plus: 0 };

function conversion(channel: LogChannel, unit: ColumnUnit, intervalMin: number): Conversion {
  switch (unit) {
    case "°C":
      return { times: 1.8, over: 1, plus: 32 };
    case "fraction":
      return { ...AS_IT_IS, times: 100 };
    case "%":
      return channel.endsWith("RhPct") ? AS_IT_IS : { ...AS_IT_IS, over: 100 };
    case "seconds":
      return { ...AS_IT_IS, over: intervalMin * 60 };
    case "minutes":
      return { ...AS_IT_IS, over: intervalMin };
    case "°F":
    case "share":
    case "on/off":
      return AS_IT_IS;
  }
}

/** A reading that would be plausible in the other temperature unit says so. */
function otherUnitHint(raw: number, unit: ColumnUnit, min: number, max: number): string {
  if (unit === "°F" && raw * 1.8 + 32 >= min && raw * 1.8 + 32 <= max) return "; it would fit as °C";
  if (unit === "°C" && raw >= min && raw <= max) return "; it would fit as °F";
  return "";
}
