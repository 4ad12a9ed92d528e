import type { Accuracy, Instrument } from "@/lib/domain/catalog";

const limits = (
  quantity: Accuracy["quantity"],
  unit: string,
  plusMinus: number,
  percentOfReading = 0,
): Accuracy => ({ quantity, unit, plusMinus, percentOfReading, statedAs: "limits" });

/** Accuracies are typical of such instruments: common practice, no source. Names and numbers are invented. */
export const psychrometer: Omit<Instrument, "id"> = {
  name: "Psychrometer, wet and dry bulb (demo)",
  kind: "psychrometer",
  serialNumber: "DEMO-PSY-1",
  accuracy: [limits("dry bulb", "°F", 0.4), limits("wet bulb", "°F", 0.4)],
  calibratedOn: "2026-06-15",
  calibrationDueOn: "2027-06-15",
};

/** Its calibration has run out, and it is coarse: what it reads decides little. */
export const pocketHygrometer: Omit<Instrument, "id"> = {
  name: "Pocket hygrometer (demo)",
  kind: "hygrometer",
  serialNumber: "DEMO-HYG-7",
  accuracy: [limits("dry bulb", "°F", 1.5), limits("relative humidity", "%", 4)],
  calibratedOn: "2024-03-01",
  calibrationDueOn: "2025-03-01",
};

export const flowPlate: Omit<Instrument, "id"> = {
  name: "Flow plate (demo)",
  kind: "airflow",
  serialNumber: "DEMO-FLO-2",
  accuracy: [limits("airflow", "cfm", 0, 5)],
  calibratedOn: "2026-04-20",
  calibrationDueOn: "2027-04-20",
};

export const manometer: Omit<Instrument, "id"> = {
  name: "Digital manometer (demo)",
  kind: "manometer",
  serialNumber: "DEMO-MAN-3",
  accuracy: [limits("static pressure", "in. w.c.", 0.005, 1)],
  calibratedOn: "2026-05-04",
  calibrationDueOn: "2027-05-04",
};

export const gauges: Omit<Instrument, "id"> = {
  name: "Gauge set with line clamps (demo)",
  kind: "refrigerant gauges",
  serialNumber: "DEMO-GAU-4",
  accuracy: [limits("refrigerant pressure", "psig", 0.5, 0.5), limits("line temperature", "°F", 0.9)],
  calibratedOn: "2026-05-04",
  calibrationDueOn: "2027-05-04",
};

export const instruments = [psychrometer, pocketHygrometer, flowPlate, manometer, gauges] as const;
