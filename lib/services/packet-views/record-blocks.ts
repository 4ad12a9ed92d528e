import { numberText } from "@/lib/charts/number-text";
import { dayOf } from "@/lib/domain/days";
import { fieldGroups } from "@/lib/domain/fields";
import type { StageRecord } from "@/lib/domain/jobs";
import { STAGE_FIELDS, STAGE_NAMES, type StageKey } from "@/lib/domain/stages";
import type { Figure, Finding } from "@/lib/engineering/findings";
import type { Block, PrintedFinding, SheetSection } from "@/lib/reports/sheet/view";
import { fieldText, namesIn } from "./field-text";
import type { PacketParts } from "./parts";
import { stagePictures } from "./stage-pictures";

type Values = Readonly<Record<string, string | number | boolean | null>>;

/** A longer text stands in paragraphs of its own: a row that breaks over pages loses its last line. */
const LONGEST_IN_A_ROW = 1_000;

/** One stage record as the file keeps it: who and when, what was entered, what it says, older revisions. */
export function recordSection(parts: PacketParts, stage: StageKey): SheetSection {
  const record = parts.records[stage];
  const title = STAGE_NAMES[stage];
  if (record === null) {
    return {
      title,
      blocks: [{ kind: "words", words: "Not begun: nothing has been recorded in this stage." }],
    };
  }
  const signed = record.state === "signed";
  return {
    title,
    lead: stateText(record, parts.timeZone),
    blocks: [
      ...inputBlocks(parts, stage),
      ...stagePictures(parts, stage),
      { kind: "heading", text: "Findings", note: findingsNote(signed, record.engineVersion) },
      // A signed record says for ever what it said when it was signed.
      {
        kind: "findings",
        findings: (signed ? record.findings : parts.evaluation.findings[stage]).map(printedFinding),
      },
      ...olderRevisions(parts.revisions[stage], parts.timeZone),
    ],
  };
}

export function stateText(record: StageRecord, timeZone: string): string {
  const { revision, state, signedAt, signatureName, updatedAt, updatedByName } = record;
  return state === "draft"
    ? `Revision ${revision}, draft, not signed. Last saved ${dayOf(updatedAt, timeZone)} by ${updatedByName}.`
    : `Revision ${revision}, signed ${signedAt === null ? "" : dayOf(signedAt, timeZone)} by ${signatureName ?? ""}.`;
}

const findingsNote = (signed: boolean, engine: string) =>
  signed ? `As signed, equations version ${engine}.` : "Of the draft as it stands now.";

function inputBlocks(parts: PacketParts, stage: StageKey): readonly Block[] {
  const values = parts.context.inputs[stage] as Values;
  const nameOf = namesIn(parts);
  const untouched: string[] = [];
  const blocks = fieldGroups(STAGE_FIELDS[stage]).flatMap(({ title: name, fields }): readonly Block[] => {
    const entered: { label: string; text: string }[] = [];
    const long: { label: string; text: string }[] = [];
    const empty: string[] = [];
    for (const [key, field] of fields) {
      const text = fieldText(field, values[key] ?? null, nameOf);
      if (text === null) empty.push(field.label);
      else if (text.length > LONGEST_IN_A_ROW) long.push({ label: field.label, text });
      else entered.push({ label: field.label, text });
    }
    // A group nobody touched is one name, not a page of blanks.
    if (entered.length === 0 && long.length === 0) {
      untouched.push(name);
      return [];
    }
    return [
      {
        kind: "heading",
        text: name,
        ...(empty.length === 0 ? {} : { note: `Not entered: ${empty.join("; ")}.` }),
      },
      { kind: "facts", rows: entered },
      ...long.flatMap(({ label, text }): readonly Block[] => [
        { kind: "heading", text: label },
        { kind: "words", words: text },
      ]),
    ];
  });
  if (untouched.length === 0) return blocks;
  return [...blocks, { kind: "words", words: `Nothing was entered under: ${untouched.join("; ")}.` }];
}

export function printedFinding({
  title,
  verdict,
  statement,
  figures,
  basis,
  nextStep,
  caution,
}: Finding): PrintedFinding {
  return { title, verdict, statement, figures: figures.map(figureText), basis, nextStep, caution };
}

function figureText({ label, value, unit, decimals, uncertainty }: Figure): string {
  const sure = uncertainty === undefined ? "" : ` ± ${numberText(uncertainty, decimals)}`;
  return `${label} ${numberText(value, decimals)}${sure} ${unit}`.trim();
}

function olderRevisions(revisions: readonly StageRecord[], timeZone: string): readonly Block[] {
  if (revisions.length < 2) return [];
  return [
    { kind: "heading", text: "Revisions" },
    {
      kind: "table",
      columns: [
        { head: "Revision", width: 50 },
        { head: "State", width: 70 },
        { head: "Signed" },
        { head: "Reopened because" },
      ],
      rows: revisions.map((one) => [
        String(one.revision),
        one.state,
        one.signedAt === null
          ? "not signed"
          : `${dayOf(one.signedAt, timeZone)} by ${one.signatureName ?? ""}`,
        one.reopenReason ?? "–",
      ]),
      ifNone: "",
    },
  ];
}
