import { numberText } from "@/lib/charts/number-text";
import type { JobContext } from "@/lib/domain/evaluate";
import { stageCount } from "@/lib/domain/evaluate/controls";
import { refrigerantCautions } from "@/lib/engineering/refrigerant/cautions";
import { ELECTRICAL_CAUTION } from "@/lib/engineering/startup/cautions";
import type { BlankLine, SheetView } from "@/lib/reports/sheet/view";
import { type PacketParts, sheetHead } from "./parts";
import { settingsOf } from "./settings";
import { startupTargets, type Target, targetText } from "./targets";

/** Refrigerants of safety group A2L that a startup record may name (ASHRAE 34). */
const A2L: ReadonlySet<string> = new Set(["R-32", "R-454B"]);

/** One sheet for the attic: what to set, what to aim at, what to watch out for, where to write. */
export function crewPacketView(parts: PacketParts): SheetView {
  const { context, evaluation } = parts;
  const { limits } = context;
  const known = settingsOf(parts);
  const isBegun = known.some(({ designed }) => designed !== null);
  const settings = isBegun ? known.filter(({ key, designed }) => designed !== null || !ON_SITE.has(key)) : [];
  const isWhole = settings.every(({ designed }) => designed !== null);
  const lead = [
    ...(parts.controls === null
      ? []
      : [`Thermostat: ${parts.controls.maker} ${parts.controls.name}, by its maker’s labels.`]),
    ...(isWhole ? [] : ["Where it says “not decided”, ask the office before starting."]),
  ].join(" ");
  const targets = startupTargets(context, evaluation.results);
  return {
    ...sheetHead(parts, "Crew sheet"),
    dense: true,
    sections: [
      {
        title: "Settings to make",
        ...(lead === "" ? {} : { lead }),
        blocks: [
          {
            kind: "table",
            columns: [
              { head: "Setting" },
              { head: "On the control it is called" },
              { head: "Set to", width: 108, strong: true },
              { head: "Left at", width: 62 },
            ],
            rows: settings.map(({ label, makerLabel, designed }) => [
              label,
              makerLabel ?? "–",
              designed ?? "not decided",
              "",
            ]),
            ifNone: "No setting has been decided yet. Ask the office before starting.",
          },
        ],
      },
      {
        title: "Aim at",
        blocks: [
          {
            kind: "table",
            columns: [
              { head: "Reading", width: 152 },
              { head: "Aim", width: 136, strong: true },
              { head: "From" },
            ],
            rows: [
              ...targets
                .filter((target) => target.key !== "static-maximum")
                .map((target) => aimRow(target, targets)),
              [
                "Steady running before reading",
                `at least ${numberText(limits["refrigerant.stabilizeMinutes"], 0)} min`,
                "company limit",
              ],
              [
                "Vacuum after the hold, pump closed off",
                `at most ${numberText(limits["refrigerant.evacuationMicrons"], 0)} microns`,
                "company limit, or the maker’s",
              ],
            ],
            ifNone: "",
          },
        ],
      },
      { title: "Wiring and safety", blocks: [{ kind: "cautions", items: cautions(context) }] },
      {
        title: "Write here if the phone dies",
        blocks: [
          {
            kind: "blanks",
            heads: stageCount(context) === 1 ? ["Reading"] : ["Full capacity", "First stage"],
            labels: BLANKS,
          },
        ],
      },
    ],
  };
}

/** What comes of readings at the house, and is nobody's to decide before. */
const ON_SITE: ReadonlySet<string> = new Set(["indoorTemperatureCorrectionF", "indoorHumidityCorrectionPct"]);

/** A reading, its aim, where that comes from; the maker's maximum stands with the design it limits, or alone. */
function aimRow(target: Target, targets: readonly Target[]): readonly string[] {
  const most = targets.find((one) => one.key === "static-maximum");
  const limit = target.key === "static" && most ? targetText(most) : null;
  const aim = targetText(target);
  if (limit === null) return [target.label, aim ?? "not known", target.from];
  if (aim === null) return [target.label, limit, "maker’s limit; no design yet"];
  return [target.label, aim, `${target.from}; maker’s limit ${limit}`];
}

function cautions({ inputs, model }: JobContext): readonly string[] {
  const refrigerant = inputs.startup_record.refrigerant ?? model?.refrigerant ?? null;
  const wired = inputs.control_setup.fanWiredFor;
  return [
    ELECTRICAL_CAUTION,
    refrigerantCautions.pressure,
    ...(refrigerant !== null && A2L.has(refrigerant) ? [refrigerantCautions.flammable] : []),
    ...(wired === null
      ? []
      : [`The fan is wired for ${wired}: check it against the maker’s diagram before power is on.`]),
    "Attic heat and footing: planks, water, out at the first sign of illness. Where anything burns fuel, test draft and carbon monoxide after changing airflow; local codes govern.",
  ];
}

/** Written twice where the system has two stages: at full capacity, and in the first. */
const BLANKS: readonly BlankLine[] = [
  { label: "Airflow", unit: "cfm" },
  { label: "Return dry bulb", unit: "°F" },
  { label: "Return wet bulb", unit: "°F" },
  { label: "Supply dry bulb", unit: "°F" },
  { label: "Supply wet bulb", unit: "°F" },
  { label: "Return static", unit: "in. w.c." },
  { label: "Supply static", unit: "in. w.c." },
  { label: "Suction pressure", unit: "psig" },
  { label: "Suction line", unit: "°F" },
  { label: "Liquid pressure", unit: "psig" },
  { label: "Liquid line", unit: "°F" },
  { label: "Outdoor dry bulb", unit: "°F" },
  { label: "Running steadily", unit: "min" },
  { label: "Instruments", unit: "" },
  { label: "Name, date", unit: "" },
];
