import { STAGE_NAMES, type StageKey } from "@/lib/domain/stages";
import type { SheetSection } from "@/lib/reports/sheet/view";
import type { PacketParts } from "./parts";

type Values = Readonly<Record<string, unknown>>;

/** One thing the standards ask a contractor to keep, and where this packet has it. */
type Item = {
  readonly asked: string;
  readonly by: string;
  readonly place: string;
  /** The record whose fields hold it; `null`: these records have no place for it. */
  readonly held: { readonly stage: StageKey; readonly fields: readonly string[] } | null;
};

const BOTH = "ACCA 5, 310";
const record = (stage: StageKey, ...fields: readonly string[]) => ({
  place: `Record “${STAGE_NAMES[stage]}”`,
  held: { stage, fields },
});
const nowhere = { place: "Not in this packet", held: null };

/** Named from memory of the standards' subjects; clause numbers are left out because they are not sure. */
const ITEMS: readonly Item[] = [
  { asked: "Ventilation rate designed", by: "ACCA 5", ...record("load_summary", "ventilationCfm") },
  {
    asked: "Heat gain and loss calculation, design conditions",
    by: BOTH,
    ...record(
      "load_summary",
      "sensibleCoolingBtuh",
      "latentCoolingBtuh",
      "heatingBtuh",
      "outdoorCoolingDbF",
      "indoorCoolingDbF",
    ),
  },
  {
    asked: "Equipment selected, its capacity at design",
    by: BOTH,
    ...record("equipment_selection", "equipmentModelId", "capacitySetting"),
  },
  {
    asked: "Airflow settings and design external static",
    by: BOTH,
    ...record("airflow_setup", "secondStageAirflowSetting", "designExternalStaticInWc"),
  },
  {
    asked: "Control settings",
    by: "ACCA 5",
    ...record("control_setup", "coolingSetpointF", "fanBetweenCalls"),
  },
  {
    asked: "Airflow through the indoor coil, and how measured",
    by: BOTH,
    ...record("startup_record", "secondAirflowCfm", "secondAirflowMethod"),
  },
  {
    asked: "External static pressure measured",
    by: "ACCA 5",
    ...record("startup_record", "secondReturnStaticInWc", "secondSupplyStaticInWc"),
  },
  { asked: "Power of the blower", by: BOTH, ...record("startup_record", "secondFanPowerW") },
  {
    asked: "Refrigerant charge: superheat or subcooling, conditions",
    by: BOTH,
    ...record(
      "startup_record",
      "outdoorDbF",
      "secondSuctionPressurePsig",
      "secondSuctionLineF",
      "secondLiquidPressurePsig",
      "secondLiquidLineF",
    ),
  },
  {
    asked: "Refrigerant charge by weighing: line set, charge added",
    by: BOTH,
    ...record("startup_record", "lineSetLengthFt", "chargeAddedOz"),
  },
  {
    asked: "Evacuation and pressure test",
    by: "ACCA 5",
    ...record("startup_record", "evacuationMicrons", "pressureTestEndPsig"),
  },
  {
    asked: "Voltage and current",
    by: "ACCA 5",
    ...record("startup_record", "supplyVoltage", "outdoorUnitAmps"),
  },
  {
    asked: "Settings as left",
    by: "ACCA 5",
    place: "Section “Settings as left”",
    held: {
      stage: "startup_record",
      fields: [
        "leftCapacitySetting",
        "leftSecondStageAirflowSetting",
        "leftCoolingSetpointF",
        "leftFanRunOnAfterCoolingS",
        "leftFanBetweenCalls",
      ],
    },
  },
  {
    asked: "Instruments and their calibration",
    by: BOTH,
    place: "Section “Instruments and uncertainty”",
    held: { stage: "startup_record", fields: ["airTemperatureInstrumentId"] },
  },
  {
    asked: "Owner shown how to run and maintain it",
    by: "ACCA 5",
    ...record("startup_record", "walkThroughDone"),
  },
  { asked: "Total duct leakage", by: BOTH, ...nowhere },
  { asked: "Airflow of each room (balance)", by: "ACCA 5", ...nowhere },
  { asked: "Combustion venting, gas input and draft", by: "ACCA 5", ...nowhere },
  { asked: "Certified match of the components (AHRI or the maker)", by: "ACCA 5", ...nowhere },
  { asked: "Permits, manuals and warranty papers", by: "ACCA 5", ...nowhere },
];

/** The table an inspector starts from. */
export function documentationSection(parts: PacketParts): SheetSection {
  return {
    title: "Appendix: where each thing is",
    lead: "What ANSI/ACCA 5 QI (“ACCA 5”) and ANSI/RESNET/ICC 310 (“310”) ask a contractor to document, by subject. The list is from memory of the two standards and names no clauses; check it against the edition in force.",
    blocks: [
      {
        kind: "table",
        columns: [
          { head: "Asked for" },
          { head: "By", width: 62 },
          { head: "Found in", width: 142 },
          { head: "State", width: 92, strong: true },
        ],
        rows: ITEMS.map((item) => [item.asked, item.by, item.place, stateOf(item, parts)]),
        ifNone: "",
      },
    ],
  };
}

function stateOf({ held }: Item, { records, context }: PacketParts): string {
  if (held === null) return "not measured here";
  const values = context.inputs[held.stage] as unknown as Values;
  const given = held.fields.filter((field) => (values[field] ?? null) !== null).length;
  if (given === 0) return "not recorded";
  const whole = given === held.fields.length ? "" : "in part, ";
  return `${whole}${records[held.stage]?.state === "signed" ? "signed" : "draft"}`;
}
