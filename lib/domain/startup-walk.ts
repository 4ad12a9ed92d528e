// Longer than usual because it is a plain list of screens.
import type { MeasuredQuantity } from "./catalog";
import type { JobContext } from "./evaluate/context";
import { type FieldDef, missingToSign } from "./fields";
import type { PlainValue } from "./merge-fields";
import { type StartupRecordInputs, startupRecordFields } from "./stages/startup-record";

export type StartupKey = keyof StartupRecordInputs & string;
type StageKey = "second" | "first";

/** What can hurt at a screen. The words are with the screens. */
export type Danger = "mains" | "pressure" | "flammable" | "heat" | "moving";

/** One screen of the phone: one reading, or a few that are entered together. */
export type WalkScreen = {
  /** Stands in the address; never renamed. */
  readonly id: string;
  readonly section: string;
  /** `any`: one of the fields is enough, as a wet bulb or a relative humidity. */
  readonly needs: "all" | "any";
  readonly fields: readonly StartupKey[];
  readonly instrument: StartupKey | null;
  readonly dangers: readonly Danger[];
};

type Values = Readonly<Record<string, PlainValue>>;
type Part = Omit<WalkScreen, "section">;

/** The screens of a startup, in the order that disturbs the system least. What does not apply is left out. */
export function startupWalk(context: JobContext, values: Values): readonly WalkScreen[] {
  const inSection = (section: string, parts: readonly Part[]) => parts.map((part) => ({ ...part, section }));
  const full = inSection("Full capacity", stageScreens("second", values));
  const first = hasTwoStages(context) ? inSection("First stage", stageScreens("first", values)) : [];
  return [
    ...inSection("Nameplate", NAMEPLATE),
    ...inSection("Refrigerant circuit", values.circuitOpened === true ? [OPENED, ...CIRCUIT] : [OPENED]),
    ...inSection("Outdoor unit", [
      one("outdoorDbF"),
      one("supplyVoltage", "electricalInstrumentId", ["mains"]),
      one("outdoorUnitAmps", "electricalInstrumentId", ["mains"]),
      one("outdoorUnitPowerW", "electricalInstrumentId", ["mains"]),
    ]),
    ...full,
    ...first,
    ...inSection("Thermostat", [
      several("thermostat-temperature", ["thermostatReadsF", "trustedReadsF"], "trustedInstrumentId"),
      several("thermostat-humidity", ["thermostatReadsRhPct", "trustedReadsRhPct"], "trustedInstrumentId"),
    ]),
  ];
}

/** How a screen stands: all its readings in, some of them, or none. */
export function screenState(screen: WalkScreen, values: Values): "done" | "begun" | "empty" {
  const given = screen.fields.filter((key) => (values[key] ?? null) !== null).length;
  if (given === 0) return "empty";
  return screen.needs === "any" || given === screen.fields.length ? "done" : "begun";
}

/** The definition of a field of the startup record. */
export function startupField(key: StartupKey): FieldDef {
  return startupRecordFields[key];
}

const QUANTITY_OF: readonly (readonly [RegExp, MeasuredQuantity])[] = [
  [/WbF$/, "wet bulb"],
  [/Rh|RhPct$/, "relative humidity"],
  [/(?:Db|HeatRise|Reads)F$/, "dry bulb"],
  [/(?:Airflow|Plate)Cfm$/, "airflow"],
  [/InWc$/, "static pressure"],
  [/Psig$/, "refrigerant pressure"],
  [/LineF$|TestStartF$|TestEndF$/, "line temperature"],
  [/olt/, "voltage"],
  [/Amps$/, "current"],
  [/PowerW$/, "power"],
  [/CondensateLb$/, "weight"],
];

/** What an instrument must be able to measure for a field. */
export function quantityOf(key: StartupKey): MeasuredQuantity | null {
  return QUANTITY_OF.find(([pattern]) => pattern.test(key))?.[1] ?? null;
}

/** Equipment known to have one stage has no first-stage readings to take. */
export function hasTwoStages({ model, controlStages }: JobContext): boolean {
  return model?.compressorKind !== "single_speed" && controlStages !== 1;
}

/** What is still needed before the record can be signed, in words. */
export function missingNames(values: Values): readonly string[] {
  return missingToSign(startupRecordFields, values).map((key) => startupField(key as StartupKey).label);
}

/** Where on the phone a field is entered: its reading's screen, or one of those that end the walk. */
export function placeOfField(key: StartupKey, screens: readonly WalkScreen[]): string {
  const screen = screens.find((one) => one.fields.includes(key));
  if (screen) return screen.id;
  return key === "notes" ? "photos" : key.startsWith("left") ? "settings" : "finish";
}

/** The stage a reading belongs to; `null` for one of the whole system. */
export function stageOfKey(key: StartupKey): StageKey | null {
  return key.startsWith("second") ? "second" : key.startsWith("first") ? "first" : null;
}

/** The same reading of the other stage, to start from. */
export function otherStageKey(key: StartupKey): StartupKey | null {
  const other = key.startsWith("first")
    ? key.replace(/^first/, "second")
    : key.startsWith("second")
      ? key.replace(/^second/, "first")
      : null;
  return other !== null && other in startupRecordFields ? (other as StartupKey) : null;
}

function one(field: StartupKey, instrument: StartupKey | null = null, dangers: readonly Danger[] = []): Part {
  return { id: field, needs: "all", fields: [field], instrument, dangers };
}

function several(
  id: string,
  fields: readonly StartupKey[],
  instrument: StartupKey | null = null,
  dangers: readonly Danger[] = [],
): Part {
  return { id, needs: "all", fields, instrument, dangers };
}

const NAMEPLATE: readonly Part[] = [
  one("refrigerant"),
  one("meteringDevice"),
  several("targets", ["targetSubcoolingF", "targetSuperheatF"]),
  several("nameplate-power", ["nameplateVolts", "ratedAmps"]),
].map((part) => (part.id === "targets" ? { ...part, needs: "any" } : part));

const OPENED = one("circuitOpened");
const CIRCUIT: readonly Part[] = [
  several("pressure-test-start", ["pressureTestStartPsig", "pressureTestStartF"], "refrigerantInstrumentId", [
    "pressure",
  ]),
  several("pressure-test-end", ["pressureTestEndPsig", "pressureTestEndF"], "refrigerantInstrumentId", [
    "pressure",
  ]),
  several("vacuum", ["evacuationReachedMicrons", "evacuationHoldMin", "evacuationMicrons", "makerHoldMin"]),
  several("charge", ["lineSetLengthFt", "chargeAddedOz", "totalChargeLb"], null, ["pressure", "flammable"]),
  several("room", ["smallestRoomFt2", "releaseHeightFt"], null, ["flammable"]),
];

function stageScreens(stage: StageKey, values: Values): readonly Part[] {
  const key = (name: string) => `${stage}${name}` as StartupKey;
  const air = "airTemperatureInstrumentId";
  const gauges = "refrigerantInstrumentId";
  const static_ = "staticInstrumentId";
  const method = values[key("AirflowMethod")];
  const moisture = (side: "Return" | "Supply"): Part => ({
    id: key(`${side}Moisture`),
    needs: "any",
    fields: [key(`${side}WbF`), key(`${side}RhPct`)],
    instrument: air,
    dangers: [],
  });
  return [
    one(key("StabilisedMin"), null, ["moving"]),
    one(key("ReturnDbF"), air),
    moisture("Return"),
    one(key("SupplyDbF"), air),
    moisture("Supply"),
    one(key("ReturnStaticInWc"), static_),
    one(key("SupplyStaticInWc"), static_),
    several(
      key("StaticProfile"),
      [key("BeforeFilterInWc"), key("AfterFilterInWc"), key("BeforeCoilInWc"), key("AfterCoilInWc")],
      static_,
    ),
    one(key("AirflowMethod")),
    ...(method === "temperature rise"
      ? [
          several(
            key("HeatRise"),
            [key("HeatRiseF"), "heaterVolts", "heaterAmps"],
            "electricalInstrumentId",
            ["mains", "heat"],
          ),
        ]
      : []),
    ...(method === "flow plate"
      ? [several(key("Plate"), [key("PlateCfm"), key("PlateSupplyStaticInWc")], "airflowInstrumentId")]
      : []),
    one(key("AirflowCfm"), "airflowInstrumentId"),
    one(key("FanPowerW"), "electricalInstrumentId", ["mains"]),
    one(key("SuctionPressurePsig"), gauges, ["pressure", "flammable"]),
    one(key("SuctionLineF"), gauges),
    one(key("LiquidPressurePsig"), gauges, ["pressure", "flammable"]),
    one(key("LiquidLineF"), gauges, ["heat"]),
    several(key("Condensate"), [key("CondensateMin"), key("CondensateLb")], "scaleInstrumentId"),
  ];
}
