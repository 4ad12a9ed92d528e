import { numberText, uncertaintyText } from "@/lib/charts/number-text";
import { COLUMNS, type LedgerCell, type LedgerLine } from "@/lib/domain/ledger";
import type { LedgerGroup, LedgerCell as PrintedCell, PrintedLedgerLine } from "@/lib/reports/homeowner/view";
import type { HomeownerTexts } from "./homeowner-text-types";
import { ENGLISH } from "./homeowner-texts-en";

/** What a cell's note says on paper; `null` leaves it out. */
type NoteOf = (note: string) => string | null;

/** The whole ledger, finished for print, with every note of its cells. */
export function fileLedger(ledger: readonly LedgerLine[]): readonly LedgerGroup[] {
  return groupsOf(ledger, ENGLISH, (note) => note);
}

/**
 * What was measured, lived or forecast in a homeowner's words, with the notes without which a number would be misread. Lines of design
 * and settings alone say nothing to them that stands not better under the settings; the file packet has them all.
 */
export function homeownerLedger(
  ledger: readonly LedgerLine[],
  texts: HomeownerTexts,
): readonly LedgerGroup[] {
  return groupsOf(ledger.filter(isAnswered), texts, (note) => knownNote(note, texts));
}

/** A forecast stands where its line has it designed: what it answers lies ahead. */
export function isAnswered({ key, cells }: LedgerLine): boolean {
  return cells.measured.value !== null || cells.lived.value !== null || key === "forecast-dry-hours";
}

function knownNote(note: string, texts: HomeownerTexts): string | null {
  const found = texts.notes.find(([known]) => known.test(note));
  return found === undefined ? null : note.replace(found[0], found[1]);
}

function groupsOf(
  ledger: readonly LedgerLine[],
  texts: HomeownerTexts,
  noteOf: NoteOf,
): readonly LedgerGroup[] {
  return [...new Set(ledger.map((line) => line.group))].map((group) => ({
    heading: texts.groups[group] ?? group,
    lines: ledger.filter((line) => line.group === group).map((line) => printedLine(line, texts, noteOf)),
  }));
}

export function lineName(line: LedgerLine, texts: HomeownerTexts): string {
  return texts.lines[line.key] ?? line.label;
}

export function unitName(unit: string, texts: HomeownerTexts): string {
  return texts.units[unit] ?? unit;
}

function printedLine(line: LedgerLine, texts: HomeownerTexts, noteOf: NoteOf): PrintedLedgerLine {
  const cells = Object.fromEntries(
    COLUMNS.map((column) => [column, printedCell(line, line.cells[column], texts, noteOf)]),
  );
  return { label: lineName(line, texts), verdict: line.verdict, ...cells } as PrintedLedgerLine;
}

function printedCell(
  line: LedgerLine,
  { value, uncertainty, note }: LedgerCell,
  texts: HomeownerTexts,
  noteOf: NoteOf,
): PrintedCell | null {
  if (value === null) return null;
  if (typeof value === "string")
    return { value: texts.values[value] ?? knownNote(value, texts) ?? value, unit: "" };
  const said = note === null ? null : noteOf(note);
  return {
    value: numberText(value, line.decimals),
    unit: unitName(line.unit, texts),
    ...(uncertainty === null
      ? {}
      : { uncertainty: uncertaintyText(uncertainty, line.decimals).replace("± ", "") }),
    ...(said === null ? {} : { note: said }),
  };
}
