import type { Finding, Verdict } from "@/lib/engineering/findings";
import { worstVerdict } from "../jobs";
import { COLUMNS, type LedgerCell, type LedgerLine } from "../ledger";
import type { StageKey } from "../stages/keys";
import type { JobContext } from "./context";
import { forecastLines } from "./forecast";
import { airflowLines, capacityLines } from "./ledger-cooling";
import type { CellDraft, LineDraft } from "./ledger-draft";
import { chargeLines, controlLines, humidityLines } from "./ledger-running";
import type { JobResults } from "./results";

/** The ledger of a job: what design needs, what it is set to give, what was measured, what the house shows. */
export function ledgerLines(context: JobContext, results: JobResults): readonly LedgerLine[] {
  return lineDrafts(context, results).map((draft) => toLine(draft, results.findings));
}

/** The findings that judge each line of the ledger, by its key: what its verdicts rest on. */
export function ledgerJudges(
  context: JobContext,
  results: JobResults,
): ReadonlyMap<string, readonly Finding[]> {
  return new Map(
    lineDrafts(context, results).map((draft) => {
      const judging = COLUMNS.flatMap((column) => judgesOf(draft[column], results.findings));
      return [draft.key, [...new Set(judging)]];
    }),
  );
}

function lineDrafts(context: JobContext, results: JobResults): readonly LineDraft[] {
  return [
    ...capacityLines(context, results),
    ...airflowLines(context, results),
    ...chargeLines(context, results),
    ...controlLines(context, results),
    ...humidityLines(context, results),
    ...forecastLines(context),
  ];
}

function toLine(draft: LineDraft, findings: Readonly<Record<StageKey, readonly Finding[]>>): LedgerLine {
  const { key, group, label, unit, decimals } = draft;
  const cells = {
    designed: toCell(draft.designed, findings),
    set: toCell(draft.set, findings),
    measured: toCell(draft.measured, findings),
    lived: toCell(draft.lived, findings),
  };
  // The latest column that carries a verdict speaks for the line: what was lived outweighs what was set.
  const verdict: Verdict | null = cells.lived.verdict ?? cells.measured.verdict ?? cells.set.verdict;
  return { key, group, label, unit, decimals, cells, verdict };
}

function toCell(
  draft: CellDraft | undefined,
  findings: Readonly<Record<StageKey, readonly Finding[]>>,
): LedgerCell {
  if (!draft) return { value: null, uncertainty: null, verdict: null, note: null, evidence: null };
  const [stage, field] = draft.at ?? [];
  return {
    value: draft.value,
    uncertainty: draft.uncertainty ?? null,
    verdict: worstVerdict(judgesOf(draft, findings)),
    note: draft.value === null ? null : (draft.note ?? null),
    evidence: stage === undefined || draft.value === null ? null : { stage, field: field ?? null },
  };
}

/** The findings that judge a cell which holds something. */
function judgesOf(
  draft: CellDraft | undefined,
  findings: Readonly<Record<StageKey, readonly Finding[]>>,
): readonly Finding[] {
  const [stage, field] = draft?.at ?? [];
  if (!draft || stage === undefined || draft.value === null) return [];
  return findings[stage].filter(
    (one) =>
      draft.rules?.includes(one.ruleId) &&
      one.verdict !== "not measured" &&
      isOfSameStage(one, field ?? null),
  );
}

/** The same rule speaks for the first stage and for full capacity; a line holds one of them. */
function isOfSameStage(finding: Finding, field: string | null): boolean {
  const own = compressorStageOf(field ?? "");
  const named = finding.inputs.map(compressorStageOf).filter((stage) => stage !== null);
  return own === null || named.length === 0 || named.includes(own);
}

/** Fields of one compressor stage begin with its name. */
function compressorStageOf(field: string): "first" | "second" | null {
  return field.startsWith("first") ? "first" : field.startsWith("second") ? "second" : null;
}
