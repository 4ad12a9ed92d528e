import { numberText } from "@/lib/charts/number-text";
import { COMPARED, type ComparedBy, type ComparedGroup } from "@/lib/domain/across-jobs";
import { CALLBACK_KINDS, CALLBACK_STATES, type Callback } from "@/lib/domain/callbacks";
import type { PacketPaper } from "@/lib/domain/packets";
import type { PacketBrand } from "@/lib/reports/homeowner/view";
import type { SheetSection, SheetView } from "@/lib/reports/sheet/view";

/** The comparisons of the digest, in the order in which they pay. */
export const MONTH_COMPARISONS = [
  "equipment",
  "secondStageAirflowSetting",
  "fanBetweenCalls",
  "fanRunOnSeconds",
] as const satisfies readonly ComparedBy[];

/** So many rows of each table; fewer where long names would take the digest past its two pages. */
export type MonthRows = { readonly groups: number; readonly callbacks: number };
export const MONTH_ROWS: readonly MonthRows[] = [
  { groups: 6, callbacks: 10 },
  { groups: 4, callbacks: 8 },
  { groups: 3, callbacks: 5 },
  { groups: 1, callbacks: 2 },
];
const [USUAL] = MONTH_ROWS as readonly [MonthRows];

export type MonthParts = {
  readonly brand: PacketBrand;
  readonly paper: PacketPaper;
  /** `2026-07` */
  readonly month: string;
  readonly createdOn: string;
  /** 0 while its content is compared. */
  readonly revision: number;
  readonly reported: readonly Callback[];
  /** Callbacks not closed, of any month. */
  readonly waiting: number;
  readonly comparisons: readonly {
    readonly by: ComparedBy;
    readonly groups: readonly ComparedGroup[];
    readonly words: string;
  }[];
};

/** The owner's month: what came in, and what jobs with humidity complaints have in common. */
export function monthView(parts: MonthParts, rows: MonthRows = USUAL): SheetView {
  const { brand, paper, month, createdOn, revision, reported, waiting, comparisons } = parts;
  const humid = reported.filter((one) => CALLBACK_KINDS[one.kind].humidity);
  return {
    paper,
    documentId: `Month ${month}`,
    revisionNote: revision < 2 ? "" : `revision ${revision}`,
    createdOn,
    brand,
    title: "Owner’s month",
    name: month,
    nameLines: [brand.companyName],
    facts: [
      { label: "Callbacks reported", text: String(reported.length) },
      { label: "Of them about humidity", text: String(humid.length) },
      { label: "Callbacks not closed, of any month", text: String(waiting) },
    ],
    dense: false,
    sections: [
      callbackSection(reported, rows.callbacks),
      ...comparisons.map(
        ({ by, groups, words }): SheetSection => ({
          title: COMPARED[by].label,
          lead: words,
          blocks: [comparisonTable(groups.slice(0, rows.groups))],
        }),
      ),
    ],
  };
}

function callbackSection(reported: readonly Callback[], most: number): SheetSection {
  const left = reported.length - most;
  return {
    title: "Callbacks of the month",
    ...(left > 0 ? { lead: `The ${most} newest; ${left} more are in the list of callbacks.` } : {}),
    blocks: [
      {
        kind: "table",
        columns: [
          { head: "Job", width: 40 },
          { head: "Customer" },
          { head: "Complaint" },
          { head: "Reported", width: 62 },
          { head: "State", width: 104 },
        ],
        rows: reported
          .toSorted((one, other) => other.reportedOn.localeCompare(one.reportedOn))
          .slice(0, most)
          .map((one) => [
            String(one.job.number),
            one.job.customerName,
            CALLBACK_KINDS[one.kind].label,
            one.reportedOn,
            CALLBACK_STATES[one.state],
          ]),
        ifNone: "No callback was reported in this month.",
      },
    ],
  };
}

function comparisonTable(groups: readonly ComparedGroup[]): SheetSection["blocks"][number] {
  return {
    kind: "table",
    columns: [
      { head: "Value" },
      { head: "Jobs", width: 46, align: "right" },
      { head: "With complaint", width: 76, align: "right" },
      { head: "Share, 95 % interval", width: 128, align: "right" },
    ],
    // The most surely troubled first, as they come.
    rows: groups.map(({ name, jobs, complaints, share }) => [
      name,
      String(jobs),
      String(complaints),
      share === null
        ? "too few jobs"
        : `${percent(share.share)} % (${percent(share.low)} to ${percent(share.high)} %)`,
    ]),
    ifNone: "No job has a signed startup yet.",
  };
}

const percent = (share: number) => numberText(100 * share, 0);
