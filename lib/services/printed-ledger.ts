import { numberText, uncertaintyText } from "@/lib/charts/number-text";
import { COLUMNS, type LedgerCell, type LedgerLine } from "@/lib/domain/ledger";
import type { LedgerGroup, PrintedLedgerLine } from "@/lib/reports/homeowner/view";
import type { HomeownerTexts } from "./homeowner-text-types";
import { ENGLISH } from "./homeowner-texts-en";

/** The whole ledger, finished for print. */
export function ledgerGroups(
  ledger: readonly LedgerLine[],
  texts: HomeownerTexts = ENGLISH,
): readonly LedgerGroup[] {
  return [...new Set(ledger.map((line) => line.group))].map((group) => ({
    heading: texts.groups[group] ?? group,
    lines: ledger.filter((line) => line.group === group).map((line) => printedLine(line, texts)),
  }));
}

export function lineName(line: LedgerLine, texts: HomeownerTexts): string {
  return texts.lines[line.key] ?? line.label;
}

export function unitName(unit: string, texts: HomeownerTexts): string {
  return texts.units[unit] ?? unit;
}

function printedLine(line: LedgerLine, texts: HomeownerTexts): PrintedLedgerLine {
  const cells = Object.fromEntries(
    COLUMNS.map((column) => [column, printedCell(line, line.cells[column], texts)]),
  );
  return { label: lineName(line, texts), verdict: line.verdict, ...cells } as PrintedLedgerLine;
}

function printedCell(line: LedgerLine, { value, uncertainty }: LedgerCell, texts: HomeownerTexts) {
  if (value === null) return null;
  if (typeof value === "string") return { value: texts.values[value] ?? value, unit: "" };
  const sure =
    uncertainty === null
      ? {}
      : { uncertainty: uncertaintyText(uncertainty, line.decimals).replace("± ", "") };
  return { value: numberText(value, line.decimals), unit: unitName(line.unit, texts), ...sure };
}
