import { numberText } from "@/lib/charts/number-text";
import { STAGE_FIELDS, STAGE_NAMES } from "@/lib/domain/stages";
import { plainFigure } from "@/lib/reports/figures";
import type { Block, SheetView } from "@/lib/reports/sheet/view";
import { fieldText } from "./field-text";
import { forecastAgainstLived } from "./forecast-against-lived";
import { livedChart } from "./lived-chart";
import { type PacketParts, sheetHead } from "./parts";
import { printedFinding, stateText } from "./record-blocks";

/** What the house's own log shows, and what is done about it. */
export function reviewPacketView(parts: PacketParts): SheetView {
  const review = parts.context.inputs.humidity_review;
  const record = parts.records.humidity_review;
  const { conclusion } = STAGE_FIELDS.humidity_review;
  const concluded =
    conclusion && review.conclusion !== null ? fieldText(conclusion, review.conclusion, String) : null;
  const { findings } = parts.evaluation;
  return {
    ...sheetHead(parts, "Humidity review"),
    dense: false,
    sections: [
      {
        title: "What it comes to",
        lead: record === null ? "Not reviewed yet." : stateText(record, parts.timeZone),
        blocks: [
          {
            kind: "facts",
            rows: [
              { label: "Conclusion", text: concluded ?? "none yet" },
              { label: "Cause, when too humid", text: review.cause ?? "none named" },
              { label: "Look again on", text: review.nextLook ?? parts.job.reviewDue ?? "no date yet" },
            ],
          },
          ...(review.notes === null ? [] : [{ kind: "words", words: review.notes } as const]),
        ],
      },
      { title: "What the log shows", blocks: logBlocks(parts) },
      forecastAgainstLived(parts),
      {
        title: "Designed against lived",
        blocks: [
          {
            kind: "table",
            columns: COMPARED,
            rows: comparedRows(parts),
            ifNone: "Nothing was logged to compare.",
          },
        ],
      },
      { title: "What was changed", blocks: changes(parts) },
      {
        title: "Findings",
        blocks: [
          {
            kind: "findings",
            findings: (record?.state === "signed" ? record.findings : findings.humidity_review).map(
              printedFinding,
            ),
          },
        ],
      },
    ],
  };
}

const COMPARED = [
  { head: "Quantity" },
  { head: "Designed or set", width: 120 },
  { head: "Lived", width: 120, strong: true },
] as const;

/** Lines that have both sides, with the numbers of the ledger. */
function comparedRows({ evaluation }: PacketParts): readonly (readonly string[])[] {
  return evaluation.ledger.flatMap((line) => {
    const { designed, set, lived } = line.cells;
    const before = typeof designed.value === "number" ? designed : set;
    if (typeof before.value !== "number" || typeof lived.value !== "number") return [];
    const say = (value: number, note: string | null) =>
      `${numberText(value, line.decimals)} ${line.unit}${note === null ? "" : ` (${note})`}`;
    return [[line.label, say(before.value, before.note), say(lived.value, lived.note)]];
  });
}

function logBlocks({ context, evaluation, log }: PacketParts): readonly Block[] {
  const summary = context.log;
  if (summary === null || log.limitPct === null) {
    return [{ kind: "words", words: "No log of the house has been reviewed yet." }];
  }
  const figure = (label: string, value: number, unit: string, decimals: number) =>
    plainFigure(label, numberText(value, decimals), unit);
  const chart = livedChart(log, log.limitPct);
  const verdict = evaluation.ledger.find((line) => line.key === "dry-hours")?.verdict ?? null;
  return [
    ...(chart === null ? [] : [{ kind: "chart", chart } as const]),
    {
      kind: "figures",
      heading: `${summary.sourceName}, ${summary.firstAt.slice(0, 10)} to ${summary.lastAt.slice(0, 10)}`,
      figures: [
        {
          ...figure("At or below the limit", summary.dryHours, "h", 0),
          verdict,
          aim: `limit ${numberText(summary.limitPct, 0)} %, of ${numberText(summary.loggedHours, 0)} h logged`,
        },
        figure("Above the limit", summary.hoursAboveLimit, "h", 0),
        figure("Longest wet spell", summary.longestWetSpellHours, "h", 1),
        figure("Mean humidity", summary.meanRhPct, "%", 0),
        ...(summary.meanDewPointF === null ? [] : [figure("Mean dew point", summary.meanDewPointF, "°F", 1)]),
        ...(summary.cyclesPerHour === null ? [] : [figure("Cycles", summary.cyclesPerHour, "per h", 1)]),
        ...(summary.medianRunMin === null ? [] : [figure("Median run", summary.medianRunMin, "min", 0)]),
      ],
    },
  ];
}

/** Reopened records are what was changed: a signed one never is. */
function changes({ revisions, records }: PacketParts): readonly Block[] {
  const reopened = Object.values(revisions)
    .flat()
    .filter((one) => one.reopenReason !== null)
    .toSorted((one, other) => one.updatedAt.localeCompare(other.updatedAt));
  return [
    {
      kind: "table",
      columns: [{ head: "Record" }, { head: "Revision", width: 50 }, { head: "Why it was opened again" }],
      rows: reopened.map((one) => [STAGE_NAMES[one.stage], String(one.revision), one.reopenReason ?? ""]),
      ifNone: "No record has been opened again: design, settings and startup stand as first signed.",
    },
    ...(records.startup_record === null
      ? [{ kind: "words", words: "There is no startup record to compare with." } as const]
      : []),
  ];
}
