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
  accuracy: [limits("dry bulb", "°F", 0.3), limits("wet bulb", "°F", 0.3)],
  calibratedOn: "2026-06-15",
  calibrationDueOn: "2027-06-15",
};

/** Coarse: what it reads decides little. */
export const pocketHygrometer: Omit<Instrument, "id"> = {
  name: "Pocket hygrometer (demo)",
  kind: "hygrometer",
  serialNumber: "DEMO-HYG-7",
  accuracy: [limits("dry bulb", "°F", 1.5), limits("relative humidity", "%", 4)],
  calibratedOn: "2026-02-10",
  calibrationDueOn: "2027-02-10",
};

export const flowPlate: Omit<Instrument, "id"> = {
  name: "Flow plate (demo)",
  kind: "airflow",
  serialNumber: "DEMO-FLO-2",
  accuracy: [limits("airflow", "cfm", 0, 4)],
  calibratedOn: "2026-04-20",
  calibrationDueOn: "2027-04-20",
};

/** Its calibration has run out. */
export const oldFlowHood: Omit<Instrument, "id"> = {
  name: "Old flow hood, calibration lapsed (demo)",
  kind: "airflow",
  serialNumber: "DEMO-HOO-9",
  accuracy: [limits("airflow", "cfm", 10, 5)],
  calibratedOn: "2024-03-01",
  calibrationDueOn: "2025-03-01",
};

export const meter: Omit<Instrument, "id"> = {
  name: "Clamp meter with watts (demo)",
  kind: "electrical meter",
  serialNumber: "DEMO-MET-5",
  accuracy: [limits("voltage", "V", 1, 1), limits("current", "A", 0.1, 2), limits("power", "W", 3, 2)],
  calibratedOn: "2026-05-04",
  calibrationDueOn: "2027-05-04",
};

export const scale: Omit<Instrument, "id"> = {
  name: "Hanging scale (demo)",
  kind: "scale",
  serialNumber: "DEMO-SCA-6",
  accuracy: [limits("weight", "lb", 0.05)],
  calibratedOn: "2026-05-04",
  calibrationDueOn: "2027-05-04",
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
