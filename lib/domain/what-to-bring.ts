import type { Instrument, MeasuredQuantity } from "./catalog";
import type { JobContext } from "./evaluate/context";

export type Thing = { readonly what: string; readonly remark: string | null };

const NEEDED: readonly (readonly [string, readonly MeasuredQuantity[]])[] = [
  ["Air thermometer with wet bulb or humidity", ["dry bulb"]],
  ["Manometer with two static probes", ["static pressure"]],
  ["Refrigerant gauges and line clamps", ["refrigerant pressure", "line temperature"]],
  ["Meter for volts and amps", ["voltage", "current"]],
  ["Power meter", ["power"]],
  ["Scale and bucket for the drain water", ["weight"]],
];

/** Refrigerants of class A2L: they burn. */
const FLAMMABLE: ReadonlySet<string> = new Set(["R-32", "R-454B"]);

/** What this job needs in the van: instruments the company has for its readings, refrigerant, papers. */
export function whatToBring(
  context: JobContext,
  today: string,
): { readonly things: readonly Thing[]; readonly caution: string | null } {
  const { model, instruments } = context;
  const refrigerant = context.inputs.startup_record.refrigerant ?? model?.refrigerant ?? null;
  const lineSet = model?.data.lineSet ?? null;
  const things: Thing[] = [
    ...NEEDED.map(([what, quantities]) => ({ what, remark: remarkOn(instruments, quantities, today) })),
    {
      what: refrigerant === null ? "Refrigerant as on the nameplate" : `Refrigerant ${refrigerant}`,
      remark:
        lineSet === null
          ? null
          : `factory charge ${lineSet.factoryChargeLb} lb for ${lineSet.includedLengthFt} ft of line; ${lineSet.addOzPerFt} oz for each foot more`,
    },
    { what: "Nitrogen, vacuum pump and micron gauge", remark: "when the circuit is opened" },
    { what: "A clean filter and tape for the test holes", remark: null },
  ];
  return {
    things,
    caution:
      refrigerant !== null && FLAMMABLE.has(refrigerant)
        ? `${refrigerant} is flammable: no flames or sparks, air the room, tools and cylinders made for it. The manufacturer’s instructions and local codes govern.`
        : null,
  };
}

function remarkOn(
  instruments: readonly Instrument[],
  quantities: readonly MeasuredQuantity[],
  today: string,
): string {
  const fit = instruments.filter(
    (one) =>
      one.retired !== true &&
      quantities.every((quantity) => one.accuracy.some((accuracy) => accuracy.quantity === quantity)),
  );
  if (fit.length === 0) return "none in the company’s catalog: accuracy will be unknown";
  return fit.map((one) => `${one.name}${isOverdue(one, today) ? " (calibration has ended)" : ""}`).join(", ");
}

/** True when the calibration had ended on a day. */
export function isOverdue(instrument: Instrument, day: string): boolean {
  return instrument.calibrationDueOn !== null && instrument.calibrationDueOn < day;
}
