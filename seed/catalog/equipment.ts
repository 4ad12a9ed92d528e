import type { NewEquipmentModel } from "@/lib/db/catalog";
import { fanTable } from "./fan-table";
import { inventedCooling, inventedHeating } from "./invented-performance";

const SOURCE_NOTE = "Demo data: invented maker, model and numbers. Not from any maker's table.";

const invented = { demoData: true, familyId: null, sourceNote: SOURCE_NOTE, refrigerant: "R-454B" } as const;

/** Variable speed, holds a coil temperature. Set to 2 tons, colder coil, airflow A: about 7.5 lb/h at 75 °F and 55 %. */
export const heldCoilHeatPump: NewEquipmentModel = {
  ...invented,
  maker: "Quillhollow Demo Works",
  name: "Quillhollow 36 V",
  modelNumber: "QH-36V-DEMO",
  compressorKind: "coil_temperature_held",
  nominalTons: 3,
  data: {
    ratedAirflowCfm: 1_200,
    capacitySettings: [
      { name: "2 tons", tons: 2, firstStageTable: null },
      { name: "2.5 tons", tons: 2.5, firstStageTable: null },
      { name: "3 tons", tons: 3, firstStageTable: null },
    ],
    limits: { maxExternalStaticInWc: 0.9, minimumAirflowCfm: 500, electricHeatMinimumAirflowCfm: 650 },
    lineSet: { includedLengthFt: 15, addOzPerFt: 0.6, factoryChargeLb: 7.2 },
    targets: { subcoolingF: 9, superheatF: 10 },
    heldCoil: {
      ratedTotalBtuh: 36_000,
      ratedSensibleRatio: 0.75,
      heldTemperatureF: 45,
      colderCoilByF: 5,
      approachAtRatedF: 10.5,
      frostLimitF: 32,
      minimumCapacityShare: 0.25,
      fullCapacity: [
        { outdoorDbF: 65, capacityBtuh: 41_000 },
        { outdoorDbF: 75, capacityBtuh: 40_000 },
        { outdoorDbF: 95, capacityBtuh: 36_000 },
        { outdoorDbF: 115, capacityBtuh: 30_000 },
      ],
      settlingMin: 8,
    },
  },
  performance: [
    ...inventedHeating("2 tons", 850, { btuh: 24_000, powerW: 1_950 }, { btuh: 16_500, powerW: 1_900 }),
    ...inventedHeating("2.5 tons", 1_000, { btuh: 30_000, powerW: 2_500 }, { btuh: 20_500, powerW: 2_420 }),
    ...inventedHeating("3 tons", 1_200, { btuh: 36_000, powerW: 3_100 }, { btuh: 24_500, powerW: 2_980 }),
  ],
  fan: fanTable(
    [
      { name: "A", cfm: 550 },
      { name: "B", cfm: 700 },
      { name: "C", cfm: 850 },
      { name: "D", cfm: 1_000 },
      { name: "E", cfm: 1_200 },
    ],
    1,
  ),
};

/** Two compressor stages, each with its own invented table. */
export const twoStageHeatPump: NewEquipmentModel = {
  ...invented,
  maker: "Ostervane Demo Air",
  name: "Ostervane 36 T",
  modelNumber: "OV-36T-DEMO",
  compressorKind: "two_stage",
  nominalTons: 3,
  data: {
    ratedAirflowCfm: 1_200,
    capacitySettings: [{ name: "3 tons", tons: 3, firstStageTable: "3 tons, first stage" }],
    limits: { maxExternalStaticInWc: 0.9, minimumAirflowCfm: 600, electricHeatMinimumAirflowCfm: 900 },
    lineSet: { includedLengthFt: 15, addOzPerFt: 0.6, factoryChargeLb: 7.8 },
    targets: { subcoolingF: 10, superheatF: 10 },
    heldCoil: null,
  },
  performance: [
    ...inventedCooling(
      { capacitySetting: "3 tons", totalBtuh: 36_000, airflowCfm: 1_200, powerW: 2_900 },
      [900, 1_200, 1_450],
    ),
    ...inventedCooling(
      { capacitySetting: "3 tons, first stage", totalBtuh: 25_500, airflowCfm: 850, powerW: 1_850 },
      [600, 850, 1_100],
    ),
    ...inventedHeating("3 tons", 1_200, { btuh: 34_600, powerW: 3_050 }, { btuh: 21_400, powerW: 2_750 }),
  ],
  fan: fanTable(
    [
      { name: "low", cfm: 700 },
      { name: "medium low", cfm: 850 },
      { name: "medium", cfm: 1_000 },
      { name: "medium high", cfm: 1_150 },
      { name: "high", cfm: 1_400 },
    ],
    2,
  ),
};

/** One speed; cooling only, so that no heating rule speaks. */
export const singleSpeedCooler: NewEquipmentModel = {
  ...invented,
  maker: "Ostervane Demo Air",
  name: "Ostervane 30 S",
  modelNumber: "OV-30S-DEMO",
  compressorKind: "single_speed",
  nominalTons: 2.5,
  refrigerant: "R-410A",
  data: {
    ratedAirflowCfm: 1_000,
    capacitySettings: [{ name: "2.5 tons", tons: 2.5, firstStageTable: null }],
    limits: { maxExternalStaticInWc: 0.8, minimumAirflowCfm: 700, electricHeatMinimumAirflowCfm: 850 },
    lineSet: { includedLengthFt: 15, addOzPerFt: 0.6, factoryChargeLb: 6.1 },
    targets: { subcoolingF: 10, superheatF: 12 },
    heldCoil: null,
  },
  performance: inventedCooling(
    { capacitySetting: "2.5 tons", totalBtuh: 30_000, airflowCfm: 1_000, powerW: 2_550 },
    [750, 1_000, 1_200],
  ),
  fan: fanTable(
    [
      { name: "tap 1", cfm: 750 },
      { name: "tap 2", cfm: 875 },
      { name: "tap 3", cfm: 1_000 },
      { name: "tap 4", cfm: 1_125 },
    ],
    3,
  ),
};
