import { numberText } from "@/lib/charts/number-text";
import type { Accuracy } from "@/lib/domain/catalog";
import { STAGE_FIELDS } from "@/lib/domain/stages";
import type { SheetSection } from "@/lib/reports/sheet/view";
import type { PacketParts } from "./parts";

/** The instruments the startup record names, with what is known of each. */
export function instrumentSection({ context, evaluation }: PacketParts): SheetSection {
  const startup = context.inputs.startup_record as Readonly<Record<string, unknown>>;
  const uses = Object.entries(STAGE_FIELDS.startup_record).filter(
    ([, field]) => field.kind === "reference" && field.to === "instrument",
  );
  const rows = uses.map(([key, field]) => {
    const tool = context.instruments.find((one) => one.id === startup[key]);
    if (!tool) return [field.label, "not named", "–", "–"];
    return [
      field.label,
      `${tool.name}${tool.serialNumber === "" ? "" : `, serial ${tool.serialNumber}`}`,
      tool.accuracy.map(accuracyText).join("; ") || "not known",
      `${tool.calibratedOn ?? "not known"}, due ${tool.calibrationDueOn ?? "not known"}`,
    ];
  });
  return {
    title: "Instruments and uncertainty",
    lead: "Accuracy as its maker states it. Uncertainties in this packet are expanded, k = 2, propagated after JCGM 100.",
    blocks: [
      {
        kind: "table",
        columns: [
          { head: "Used for", width: 116 },
          { head: "Instrument" },
          { head: "Accuracy" },
          { head: "Calibrated", width: 92 },
        ],
        rows,
        ifNone: "",
      },
      ...(evaluation.questions.length === 0
        ? []
        : ([
            { kind: "heading", text: "Questions the readings raise" },
            { kind: "list", items: evaluation.questions.map(({ question }) => question), numbered: false },
          ] as const)),
    ],
  };
}

function accuracyText({ quantity, unit, plusMinus, percentOfReading, statedAs }: Accuracy): string {
  const digits = (value: number) => /\.(\d+)$/.exec(String(value))?.[1]?.length ?? 0;
  const fixed = plusMinus === 0 ? "" : `${numberText(plusMinus, digits(plusMinus))} ${unit}`;
  const share =
    percentOfReading === 0 ? "" : `${numberText(percentOfReading, digits(percentOfReading))} % of reading`;
  const parts = [fixed, share].filter((part) => part !== "").join(" + ");
  return `${quantity} ± ${parts === "" ? "0" : parts}${statedAs === "limits" ? "" : " (standard uncertainty)"}`;
}
