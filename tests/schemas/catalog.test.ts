import { expect, test } from "vitest";
import { saveEquipmentSchema, saveInstrumentSchema } from "@/lib/schemas/catalog";
import { EQUIPMENT_FORM } from "../support/door-samples";

const problems = (schema: typeof saveEquipmentSchema | typeof saveInstrumentSchema, input: unknown) =>
  (schema.safeParse(input).error?.issues ?? []).map(({ path, message }) => `${path.join(".")}: ${message}`);

test("numbers are read with their units; what is left empty is not published, never zero", () => {
  const read = saveEquipmentSchema.parse(EQUIPMENT_FORM);
  expect(read).toMatchObject({ nominalTons: 3, data: { ratedAirflowCfm: 1200, heldCoil: null } });
  expect(read.data.limits.minimumAirflowCfm).toBeNull();
  expect(read.data.targets).toEqual({ subcoolingF: 10, superheatF: null });
  expect(read.data.capacitySettings[0]?.firstStageTable).toBeNull();
});

test.each([
  [{ nominalTons: "36000 Btu/h" }, /^nominalTons: Nominal capacity: .*another unit/],
  [{ nominalTons: "" }, /^nominalTons: Nominal capacity is needed/],
  [{ maxExternalStaticInWc: "80" }, /^maxExternalStaticInWc: .*from 0.05 to 3 in. w.c./],
  [{ capacitySettings: [] }, /^capacitySettings: .*at least one/],
  [{ includedLengthFt: "" }, /^factoryChargeLb: Charge and line set/],
  [{ compressorKind: "coil_temperature_held" }, /^compressorKind: .*held-coil data/],
  [{ maker: "  " }, /^maker: Maker is needed/],
])("%j is refused, naming the field", (change, problem) => {
  const found = problems(saveEquipmentSchema, { ...EQUIPMENT_FORM, ...change });
  expect(found.join("\n")).toMatch(problem);
});

test("two capacity settings of one name are refused", () => {
  const one = { name: "3 tons", tons: "3", firstStageTable: "" };
  expect(problems(saveEquipmentSchema, { ...EQUIPMENT_FORM, capacitySettings: [one, one] }).join()).toMatch(
    /name of its own/,
  );
});

test("an instrument needs an accuracy, each quantity once, and a due day after its calibration", () => {
  const line = {
    quantity: "airflow",
    unit: "cfm",
    plusMinus: "10 ",
    percentOfReading: "5 %",
    statedAs: "limits",
  };
  const tool = {
    instrumentId: null,
    expectedVersion: null,
    name: "Hood",
    kind: "airflow",
    serialNumber: "",
    accuracy: [line],
    calibratedOn: "2026-06-01",
    calibrationDueOn: "",
  };
  expect(saveInstrumentSchema.parse(tool)).toMatchObject({
    accuracy: [{ plusMinus: 10, percentOfReading: 5 }],
    calibrationDueOn: null,
  });
  expect(problems(saveInstrumentSchema, { ...tool, accuracy: [] }).join()).toMatch(/at least one quantity/);
  expect(problems(saveInstrumentSchema, { ...tool, accuracy: [line, line] }).join()).toMatch(
    /each quantity only once/,
  );
  expect(problems(saveInstrumentSchema, { ...tool, calibrationDueOn: "2026-05-01" }).join()).toMatch(
    /^calibrationDueOn: .*before the calibration/,
  );
});
