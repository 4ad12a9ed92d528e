import { standardPressurePsia } from "@/lib/engineering/air";
import type { Finding } from "@/lib/engineering/findings";
import {
  evacuationFindings,
  flammableChargeFindings,
  lineSetFindings,
  pressureTestFindings,
} from "@/lib/engineering/refrigerant";
import { startupRecordFields } from "../stages/startup-record";
import type { JobContext } from "./context";
import { byTable, withFields } from "./field-names";
import { guarded } from "./guard";

/**
 * The refrigerant circuit: tightness, vacuum, charge for the line set, flammable charge against its room. Pressure test and
 * vacuum belong to a circuit that was opened; they are asked for once the record says so or holds one of their readings.
 */
export function circuitFindings(context: JobContext): readonly Finding[] {
  const { startup_record: inputs } = context.inputs;
  const evacuation = {
    vacuumMicrons: inputs.evacuationReachedMicrons,
    heldMicrons: inputs.evacuationMicrons,
    holdMinutes: inputs.evacuationHoldMin,
    makerHoldMinutes: inputs.makerHoldMin,
  };
  const test = {
    startPressurePsig: inputs.pressureTestStartPsig,
    startTempF: inputs.pressureTestStartF,
    endPressurePsig: inputs.pressureTestEndPsig,
    endTempF: inputs.pressureTestEndF,
  };
  const isAsked = (readings: object) =>
    inputs.circuitOpened === true || Object.values(readings).some((value) => value !== null);
  const found = [
    ...(isAsked(test)
      ? guarded(() =>
          pressureTestFindings(
            { ...test, sitePressurePsia: sitePressure(context), dropUncertaintyPsi: null },
            context.limits,
          ),
        )
      : []),
    ...(isAsked(evacuation) ? guarded(() => evacuationFindings(evacuation, context.limits)) : []),
    ...guarded(() => lineSetOf(context)),
    ...guarded(() => flammableOf(context)),
  ];
  return withFields(found, byTable(FIELDS, startupRecordFields));
}

function sitePressure({ elevationFt }: JobContext): number | null {
  return elevationFt === null ? null : standardPressurePsia(elevationFt);
}

/** Asked only where the maker gives the charge by length and the record has a line set. */
function lineSetOf(context: JobContext): readonly Finding[] {
  const { lineSetLengthFt, chargeAddedOz } = context.inputs.startup_record;
  const maker = context.model?.data.lineSet;
  if (!maker || (lineSetLengthFt === null && chargeAddedOz === null)) return [];
  return lineSetFindings({
    lineLengthFt: lineSetLengthFt,
    includedLengthFt: maker.includedLengthFt,
    ouncesPerFt: maker.addOzPerFt,
    addedOz: chargeAddedOz,
  });
}

const OZ_PER_LB = 16;

/** The total charge as entered, or the maker's factory charge and what was weighed in. */
function flammableOf(context: JobContext): readonly Finding[] {
  const inputs = context.inputs.startup_record;
  const factoryLb = context.model?.data.lineSet?.factoryChargeLb ?? null;
  const summedLb =
    factoryLb === null || inputs.chargeAddedOz === null ? null : factoryLb + inputs.chargeAddedOz / OZ_PER_LB;
  if (inputs.refrigerant === null) return [];
  return flammableChargeFindings({
    refrigerant: inputs.refrigerant,
    chargeLb: inputs.totalChargeLb ?? summedLb,
    roomAreaFt2: inputs.smallestRoomFt2,
    releaseHeightFt: inputs.releaseHeightFt,
  });
}

const FIELDS: Readonly<Record<string, string | null>> = {
  vacuumMicrons: "evacuationReachedMicrons",
  heldMicrons: "evacuationMicrons",
  holdMinutes: "evacuationHoldMin",
  makerHoldMinutes: "makerHoldMin",
  startPressurePsig: "pressureTestStartPsig",
  startTempF: "pressureTestStartF",
  endPressurePsig: "pressureTestEndPsig",
  endTempF: "pressureTestEndF",
  lineLengthFt: "lineSetLengthFt",
  addedOz: "chargeAddedOz",
  chargeLb: "totalChargeLb",
  roomAreaFt2: "smallestRoomFt2",
};
