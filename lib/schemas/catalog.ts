// Longer than usual because every form of the catalog shares its words for numbers, texts and days.
import { z } from "zod";
import { COMPRESSOR_KINDS, equipmentDataSchema, MEASURED_QUANTITIES } from "@/lib/domain/catalog";
import { isoDay } from "@/lib/domain/iso-day";
import { readQuantityText, shownUnit } from "@/lib/domain/quantity-text";
import { MOST_CHARACTERS, TABLE_KINDS, tableMappingSchema } from "./catalog-table";

const uuid = z.uuid({ error: "Choose one from the list." });
const text = (label: string, most = 200) =>
  z
    .string({ error: `${label}: enter text.` })
    .trim()
    .max(most, { error: `${label} is longer than ${most} characters. Shorten it.` });
const needed = (label: string) => text(label).min(1, { error: `${label} is needed.` });
const version = z.coerce.number().pipe(z.int32().min(1));
const dayOrNone = (label: string) =>
  z
    .union([z.literal(""), isoDay(`${label}: enter a date such as 2026-07-31.`)])
    .transform((given) => (given === "" ? null : given));

const optionalNumber = (label: string, unit: string, least: number, most: number) =>
  z.union([z.string().max(100), z.number(), z.null()]).transform((given, context) => {
    const read =
      typeof given === "string" ? readQuantityText(given, unit) : { ok: true as const, value: given };
    if (read.ok && (read.value === null || (read.value >= least && read.value <= most))) return read.value;
    const range =
      `from ${least.toLocaleString("en-US")} to ${most.toLocaleString("en-US")} ${shownUnit(unit)}`.trim();
    context.addIssue({
      code: "custom",
      message: `${label}: ${read.ok ? `enter a number ${range}.` : read.problem}`,
    });
    return z.NEVER;
  });
const number = (label: string, unit: string, least: number, most: number) =>
  optionalNumber(label, unit, least, most).transform((value, context) => {
    if (value !== null) return value;
    context.addIssue({ code: "custom", message: `${label} is needed.` });
    return z.NEVER;
  });

const labels = z
  .record(z.string().max(60), text("Maker's label"))
  .transform((given) => Object.fromEntries(Object.entries(given).filter(([, label]) => label !== "")));

const heldCoil = z.strictObject({
  ratedTotalBtuh: number("Rated total capacity", "Btu/h", 1_000, 500_000),
  ratedSensibleRatio: number("Rated sensible ratio", "", 0.4, 1),
  heldTemperatureF: number("Coil temperature held", "°F", 20, 60),
  colderCoilByF: number("Colder-coil setting lowers it by", "Δ°F", 0, 15),
  approachAtRatedF: number("Coil over evaporating temperature at rating", "Δ°F", 0, 25),
  frostLimitF: number("Frost limit", "°F", 20, 40),
  minimumCapacityShare: number("Least capacity as a share of the most", "", 0.05, 1),
  fullCapacity: z
    .array(
      z.strictObject({
        outdoorDbF: number("Outdoor dry bulb", "°F", -40, 150),
        capacityBtuh: number("Most capacity", "Btu/h", 1_000, 500_000),
      }),
    )
    .min(1, { error: "Most capacity by outdoor temperature: enter at least one line." })
    .max(40),
  settlingMin: number("Minutes to settle", "min", 0, 60),
});

/** One model without its tables; these come by paste or file. `modelId` is the version it was opened from. */
export const saveEquipmentSchema = z
  .strictObject({
    modelId: uuid.nullable(),
    maker: needed("Maker"),
    name: needed("Name"),
    modelNumber: text("Model number"),
    compressorKind: z.enum(COMPRESSOR_KINDS, { error: "Compressor: choose one from the list." }),
    nominalTons: number("Nominal capacity", "tons", 0.5, 25),
    refrigerant: needed("Refrigerant"),
    sourceNote: text("Where the data come from", 500),
    ratedAirflowCfm: number("Rated airflow", "cfm", 100, 10_000),
    capacitySettings: z
      .array(
        z.strictObject({
          name: needed("Capacity setting"),
          tons: number("Capacity of the setting", "tons", 0.5, 25),
          firstStageTable: text("First-stage rows").transform((name) => (name === "" ? null : name)),
        }),
      )
      .min(1, { error: "Capacity settings: enter at least one; a plain unit has one." })
      .max(20),
    maxExternalStaticInWc: optionalNumber("Maximum external static", "in. w.c.", 0.05, 3),
    minimumAirflowCfm: optionalNumber("Minimum airflow", "cfm", 50, 10_000),
    electricHeatMinimumAirflowCfm: optionalNumber("Minimum airflow with electric heat", "cfm", 50, 10_000),
    includedLengthFt: optionalNumber("Line-set length included", "ft", 0, 300),
    addOzPerFt: optionalNumber("Charge to add", "oz/ft", 0, 5),
    factoryChargeLb: optionalNumber("Factory charge", "lb", 0.1, 100),
    subcoolingF: optionalNumber("Target subcooling", "Δ°F", 1, 40),
    superheatF: optionalNumber("Target superheat", "Δ°F", 1, 40),
    boardLabels: labels,
    heldCoil: heldCoil.nullable(),
  })
  .superRefine((given, context) => {
    const need = (path: string, message: string) =>
      context.addIssue({ code: "custom", path: [path], message });
    const names = given.capacitySettings.map(({ name }) => name);
    if (new Set(names).size < names.length)
      need("capacitySettings", "Capacity settings: each needs a name of its own.");
    const line = [given.includedLengthFt, given.addOzPerFt, given.factoryChargeLb];
    const filled = line.filter((one) => one !== null).length;
    if (filled !== 0 && filled !== 3) {
      need(
        "factoryChargeLb",
        "Charge and line set: enter length included, charge to add and factory charge, or none of them.",
      );
    }
    if ((given.compressorKind === "coil_temperature_held") !== (given.heldCoil !== null)) {
      need(
        "compressorKind",
        "A compressor that holds a coil temperature needs the held-coil data, and only it.",
      );
    }
  })
  .transform((given) => {
    const { includedLengthFt, addOzPerFt, factoryChargeLb } = given;
    const data = equipmentDataSchema.parse({
      ratedAirflowCfm: given.ratedAirflowCfm,
      capacitySettings: given.capacitySettings,
      limits: {
        maxExternalStaticInWc: given.maxExternalStaticInWc,
        minimumAirflowCfm: given.minimumAirflowCfm,
        electricHeatMinimumAirflowCfm: given.electricHeatMinimumAirflowCfm,
      },
      lineSet: factoryChargeLb === null ? null : { includedLengthFt, addOzPerFt, factoryChargeLb },
      targets: { subcoolingF: given.subcoolingF, superheatF: given.superheatF },
      boardLabels: given.boardLabels,
      heldCoil: given.heldCoil,
    });
    const { modelId, maker, name, modelNumber, compressorKind, nominalTons, refrigerant, sourceNote } = given;
    return { modelId, maker, name, modelNumber, compressorKind, nominalTons, refrigerant, sourceNote, data };
  });
export type SaveEquipmentInput = z.output<typeof saveEquipmentSchema>;

export const equipmentIdSchema = z.strictObject({ modelId: uuid });

/** A block as mended on the screen. The server reads and checks it again with the same code. */
export const importTableSchema = z.strictObject({
  modelId: uuid,
  kind: z.enum(TABLE_KINDS),
  /** `replace` the model's table, or `add` the block's rows to it. */
  how: z.enum(["replace", "add"]),
  headings: z.array(z.string().max(200)).max(100),
  rows: z
    .array(z.strictObject({ line: z.number().int().min(0), cells: z.array(z.string().max(500)).max(100) }))
    .max(20_000)
    .refine((rows) => rows.reduce((sum, { cells }) => sum + cells.join("").length, 0) <= MOST_CHARACTERS, {
      error: "This table is too long. Import it in parts.",
    }),
  mapping: tableMappingSchema,
});
export type ImportTableInput = z.output<typeof importTableSchema>;

/** Of a model or of a thermostat. */
export const moveToVersionSchema = z.strictObject({ jobId: uuid, expectedVersion: version, versionId: uuid });
export type MoveToVersionInput = z.output<typeof moveToVersionSchema>;

export const saveControlSchema = z
  .strictObject({
    controlId: uuid.nullable(),
    maker: needed("Maker"),
    name: needed("Name"),
    stages: z.enum(["1", "2"], { error: "Cooling stages: choose one or two." }),
    makerLabels: labels,
  })
  .transform(({ stages, makerLabels, ...rest }) => ({
    ...rest,
    data: { stages: stages === "1" ? (1 as const) : (2 as const), makerLabels },
  }));
export type SaveControlInput = z.output<typeof saveControlSchema>;

export const retireControlSchema = z.strictObject({ controlId: uuid });

export const saveInstrumentSchema = z
  .strictObject({
    instrumentId: uuid.nullable(),
    expectedVersion: version.nullable(),
    name: needed("Name"),
    kind: needed("Kind"),
    serialNumber: text("Serial number"),
    accuracy: z
      .array(
        z.strictObject({
          quantity: z.enum(MEASURED_QUANTITIES, { error: "Quantity: choose one from the list." }),
          unit: needed("Unit"),
          plusMinus: number("Plus or minus", "", 0, 10_000),
          percentOfReading: number("Percent of reading", "%", 0, 50),
          statedAs: z.enum(["limits", "standard uncertainty"]),
        }),
      )
      .min(1, { error: "Accuracy: enter at least one quantity; without it no reading can be judged." })
      .max(MEASURED_QUANTITIES.length)
      .refine((lines) => new Set(lines.map(({ quantity }) => quantity)).size === lines.length, {
        error: "Accuracy: each quantity only once.",
      }),
    calibratedOn: dayOrNone("Calibrated on"),
    calibrationDueOn: dayOrNone("Calibration due"),
  })
  .superRefine(({ calibratedOn, calibrationDueOn }, context) => {
    if (calibratedOn !== null && calibrationDueOn !== null && calibrationDueOn < calibratedOn) {
      context.addIssue({
        code: "custom",
        path: ["calibrationDueOn"],
        message: "Calibration due: this day is before the calibration.",
      });
    }
  });
export type SaveInstrumentInput = z.output<typeof saveInstrumentSchema>;

export const retireInstrumentSchema = z.strictObject({ instrumentId: uuid, retired: z.boolean() });
