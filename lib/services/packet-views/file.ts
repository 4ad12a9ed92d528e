import { dayOf } from "@/lib/domain/days";
import { STAGE_NAMES, STAGES } from "@/lib/domain/stages";
import type { SheetSection, SheetView } from "@/lib/reports/sheet/view";
import { fileLedger } from "../printed-ledger";
import { documentationSection } from "./documentation";
import { forecastSection } from "./forecast";
import { instrumentSection } from "./instruments";
import { type PacketParts, sheetHead } from "./parts";
import { recordSection } from "./record-blocks";
import { settingsOf } from "./settings";

/** Everything a job is judged by, for the file and for an inspector. */
export function filePacketView(parts: PacketParts): SheetView {
  return {
    ...sheetHead(parts, "File packet"),
    dense: false,
    sections: [
      stateSection(parts),
      ...STAGES.map((stage) => recordSection(parts, stage)),
      {
        title: "Ledger",
        lead: "Each line follows one quantity from the design to the life of the house. The number after ± is the expanded uncertainty (k = 2).",
        blocks: [{ kind: "ledger", groups: fileLedger(parts.evaluation.ledger) }],
      },
      forecastSection(parts),
      settingsSection(parts),
      instrumentSection(parts),
      photoSection(parts),
      documentationSection(parts),
    ],
  };
}

function stateSection({ records, evaluation, timeZone }: PacketParts): SheetSection {
  return {
    title: "Where the job stands",
    lead: "A signed record keeps what was said of it when it was signed. Later records can answer what was still open then: the last column says how each stands with all of them.",
    blocks: [
      {
        kind: "table",
        columns: [
          { head: "Record", strong: true },
          { head: "Revision", width: 46 },
          { head: "State", width: 60 },
          { head: "Signed" },
          { head: "As signed", width: 66 },
          { head: "With all records", width: 74 },
        ],
        rows: STAGES.map((stage) => {
          const record = records[stage];
          if (record === null) return [STAGE_NAMES[stage], "–", "not begun", "–", "–", "–"];
          return [
            STAGE_NAMES[stage],
            String(record.revision),
            record.state,
            record.signedAt === null
              ? "–"
              : `${dayOf(record.signedAt, timeZone)} by ${record.signatureName ?? ""}`,
            record.state === "signed" ? (record.verdict ?? "for information") : "–",
            evaluation.verdicts[stage] ?? "for information",
          ];
        }),
        ifNone: "",
      },
    ],
  };
}

function settingsSection(parts: PacketParts): SheetSection {
  return {
    title: "Settings as left",
    lead: "What design wanted, and what the tech left. An empty place was not recorded.",
    blocks: [
      {
        kind: "table",
        columns: [
          { head: "Setting" },
          { head: "On the control it is called" },
          { head: "Designed", width: 84 },
          { head: "As left", width: 84, strong: true },
        ],
        rows: settingsOf(parts).map(({ label, makerLabel, designed, left }) => [
          label,
          makerLabel ?? "–",
          designed ?? "not decided",
          left ?? "not recorded",
        ]),
        ifNone: "",
      },
    ],
  };
}

function photoSection({ photos }: PacketParts): SheetSection {
  return {
    title: "Photographs",
    blocks:
      photos.length === 0
        ? [{ kind: "words", words: "No photograph has been added to this job." }]
        : [{ kind: "photos", photos }],
  };
}
