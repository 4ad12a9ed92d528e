import { readUnit, type UnitFamily } from "./units";

/** Which sign stands before the decimals in a block. `unclear`: its cells speak for both. */
export type DecimalSign = "point" | "comma" | "unclear";

export type CellNumber =
  | { readonly kind: "number"; readonly value: number; readonly unit: string | null }
  | { readonly kind: "empty" }
  /** As decimals and as thousands: only the quantity's range can tell. */
  | {
      readonly kind: "two readings";
      readonly values: readonly [number, number];
      readonly unit: string | null;
      readonly reason: string;
      readonly fix: string;
    }
  | { readonly kind: "refused"; readonly reason: string; readonly fix: string };

const NOTHING = new Set(["", "na", "n/a", "nan", "null", "none", "#n/a", "#ref!", "#value!", "#div/0!"]);
/** Digits with marks between them: a sign, then digits, spaces, apostrophes, points and commas. */
const NUMBER = /^([+-]?)((?:\d|[.,'’](?=\d)|(?<=\d)\s(?=\d{3}(?!\d)))+)\s*(.*)$/u;
const COMMA_IS_DECIMAL = /(?:^|[^\d.,])(?:\d+,\d{1,2}|\d+,\d{4,}|0,\d+)(?!\d|[.,]\d)|\.\d{3},\d/;
const POINT_IS_DECIMAL = /(?:^|[^\d.,])(?:\d+\.\d{1,2}|\d+\.\d{4,}|0\.\d+)(?!\d|[.,]\d)|,\d{3}\.\d/;

/** The decimal sign of cells, from those that can be read in one way only; null when there are none. */
export function decimalSignOf(cells: Iterable<string>): DecimalSign | null {
  let comma = false;
  let point = false;
  for (const cell of cells) {
    comma ||= COMMA_IS_DECIMAL.test(cell);
    point ||= POINT_IS_DECIMAL.test(cell);
    if (comma && point) return "unclear";
  }
  if (comma) return "comma";
  return point ? "point" : null;
}

/** The number in a cell as a spreadsheet shows it: thousands marks, decimal comma, its own unit behind it. */
export function readNumberCell(cell: string, sign: DecimalSign, family: UnitFamily): CellNumber {
  const text = withoutFootnote(cell)
    .normalize("NFKC")
    .replaceAll(/[−–](?=\d)/g, "-")
    .trim();
  if (NOTHING.has(text.toLowerCase()) || /^[-–—.\s]+$/.test(text)) return { kind: "empty" };
  const [, minus = "", digits = "", suffix = ""] = NUMBER.exec(text) ?? [];
  if (digits === "") {
    return {
      kind: "refused",
      reason: `“${short(text)}” is not a number.`,
      fix: "Enter digits, for instance 1250 or 0.5.",
    };
  }
  const unit = suffix === "" ? null : readUnit(suffix, family);
  if (suffix !== "" && unit === null) {
    return {
      kind: "refused",
      reason: `“${short(suffix)}” behind the number is no unit of ${family}.`,
      fix: "Leave the number alone in the cell, or write one of the units offered for the column.",
    };
  }
  const plain = plainDigits(digits.replaceAll(/[\s'’]/g, ""), sign);
  if (plain === null) {
    const bare = digits.replace(/[.,]/, "");
    return {
      kind: "two readings",
      values: [Number(`${minus}${digits.replace(",", ".")}`), Number(`${minus}${bare}`)],
      unit,
      reason: `“${short(digits)}” can be read in two ways, and its block does not tell whether point or comma stands before decimals.`,
      fix: "Write the number without a thousands separator and with a point before decimals.",
    };
  }
  const value = Number(`${minus}${plain}`);
  return Number.isFinite(value)
    ? { kind: "number", value, unit }
    : {
        kind: "refused",
        reason: `“${short(digits)}” is not a number.`,
        fix: "Enter digits, for instance 1250 or 0.5.",
      };
}

/** A mark that leads to a footnote is no digit: 34.2¹ would otherwise become 34.21. */
function withoutFootnote(cell: string): string {
  return cell
    .replace(/(?<=\d)\s*[⁰¹²³⁴-⁹]+\s*$/u, "")
    .replace(/(?<=\d)\s*(?:[*†‡§#]+|\(\w\)|\[\w\])\s*$/u, "");
}

/** Digits with a point before decimals and nothing else; null when they can be read in two ways. */
function plainDigits(digits: string, sign: DecimalSign): string | null {
  const marks: readonly string[] = digits.match(/[.,]/g) ?? [];
  const last = marks.at(-1);
  if (last === undefined) return digits;
  // Two kinds of marks: the last is the decimal sign, all others part thousands.
  if (marks.includes(".") && marks.includes(",")) {
    const thousands = last === "," ? "." : ",";
    if (marks.filter((mark) => mark === last).length > 1) return "not a number";
    const [whole = "", part = ""] = digits.split(last);
    return isGrouped(whole, thousands) ? `${whole.replaceAll(thousands, "")}.${part}` : "not a number";
  }
  if (marks.length > 1) return isGrouped(digits, last) ? digits.replaceAll(last, "") : "not a number";
  const [whole = "", part = ""] = digits.split(last);
  const couldBeThousands = /^[1-9]\d{0,2}$/.test(whole) && part.length === 3;
  if (!couldBeThousands) return `${whole}.${part}`;
  if (sign === "unclear") return null;
  return (last === ",") === (sign === "comma") ? `${whole}.${part}` : `${whole}${part}`;
}

function isGrouped(digits: string, mark: string): boolean {
  const [first = "", ...rest] = digits.split(mark);
  return /^\d{1,3}$/.test(first) && rest.every((group) => /^\d{3}$/.test(group));
}

function short(text: string): string {
  return text.length > 40 ? `${text.slice(0, 40)}…` : text;
}
