import { numberText, uncertaintyText } from "@/lib/charts/number-text";
import { COLUMNS, type LedgerCell, type LedgerLine } from "@/lib/domain/ledger";
import { gallonsPerHour } from "@/lib/engineering/moisture";
import type { JudgedFigure } from "@/lib/reports/figures";
import type { HomeownerPacketView, LedgerGroup, PrintedLedgerLine } from "@/lib/reports/homeowner/view";
import { PLAIN_WORDS } from "./homeowner-packet-words";

/** The measured figures a homeowner may care for, under the ledger's headings. */
export function measuredGroups(ledger: readonly LedgerLine[]): HomeownerPacketView["measured"] {
  const lines = ledger.filter((line) => line.key in PLAIN_WORDS);
  return [...new Set(lines.map((line) => line.group))].map((heading) => ({
    heading,
    figures: lines.filter((line) => line.group === heading).flatMap(toFigures),
  }));
}

function toFigures(line: LedgerLine): readonly JudgedFigure[] {
  const { measured, designed } = line.cells;
  const value = typeof measured.value === "number" ? measured.value : null;
  const figure: JudgedFigure = {
    label: line.label,
    value: value === null ? null : numberText(value, line.decimals),
    unit: line.unit,
    ...(measured.uncertainty === null
      ? {}
      : { uncertainty: numberText(measured.uncertainty, line.decimals) }),
    verdict: value === null ? "not measured" : measured.verdict,
    aim:
      typeof designed.value === "number"
        ? `design ${numberText(designed.value, line.decimals)} ${line.unit}`
        : null,
    plainWords: PLAIN_WORDS[line.key] ?? null,
    strip: null,
  };
  if (line.key !== "moisture" || value === null) return [figure];
  const gallons = {
    ...figure,
    label: "The same in gallons",
    value: numberText(gallonsPerHour(value), 2),
    unit: "gal/h",
    aim: null,
    plainWords: null,
    verdict: null,
  };
  return [figure, { ...gallons, uncertainty: undefined }];
}

/** The whole ledger, finished for print. */
export function ledgerGroups(ledger: readonly LedgerLine[]): readonly LedgerGroup[] {
  return [...new Set(ledger.map((line) => line.group))].map((heading) => ({
    heading,
    lines: ledger.filter((line) => line.group === heading).map(printedLine),
  }));
}

function printedLine(line: LedgerLine): PrintedLedgerLine {
  const cells = Object.fromEntries(COLUMNS.map((column) => [column, printedCell(line, line.cells[column])]));
  return { label: line.label, verdict: line.verdict, ...cells } as PrintedLedgerLine;
}

function printedCell(line: LedgerLine, { value, uncertainty }: LedgerCell) {
  if (value === null) return null;
  if (typeof value === "string") return { value, unit: "" };
  const sure =
    uncertainty === null
      ? {}
      : { uncertainty: uncertaintyText(uncertainty, line.decimals).replace("± ", "") };
  return { value: numberText(value, line.decimals), unit: line.unit, ...sure };
}
