import { OutOfRangeError } from "../errors";
import { type Finding, finding, notMeasured, verdictOnInterval } from "../findings";
import type { LimitValues } from "../limit-definition";
import { refrigerantCautions } from "./cautions";
import type { refrigerantLimits } from "./limits";
import { refrigerantRules } from "./rules";
import { expectedTestPressurePsig } from "./tightness";

type Limits = LimitValues<typeof refrigerantLimits>;

/** Readings of an evacuation. `null`: not given. */
export type EvacuationReadings = {
  /** Vacuum at the end of pumping, microns. */
  readonly vacuumMicrons: number | null;
  /** Vacuum after the hold, pump closed off, microns. */
  readonly heldMicrons: number | null;
  readonly holdMinutes: number | null;
  /** Hold time the maker asks for, min. */
  readonly makerHoldMinutes: number | null;
};

/**
 * Judges an evacuation: deep enough, and holding for the maker's time with the pump closed off.
 *
 * @param readings - Microns 0 to 760,000, minutes 0 to 2,880; `null` where not given.
 * @param limits - The company limits in force.
 * @returns Two findings: depth and hold.
 * @throws {@link OutOfRangeError} for a reading outside its range, naming it.
 * @see Maker's instructions: 500 microns or less and holding (published).
 */
export function evacuationFindings(readings: EvacuationReadings, limits: Limits): readonly Finding[] {
  const most = limits["refrigerant.evacuationMicrons"];
  return [depthFinding(readings, most), holdFinding(readings, most)];
}

function depthFinding({ vacuumMicrons }: EvacuationReadings, most: number): Finding {
  const rule = refrigerantRules.evacuationDepth;
  if (vacuumMicrons === null) {
    return notMeasured(
      rule,
      ["vacuumMicrons"],
      "Read the vacuum with a micron gauge at the system, not at the pump.",
    );
  }
  const microns = inRange("vacuumMicrons", vacuumMicrons, "micron", 760_000);
  const meets = microns <= most;
  return finding(rule, {
    verdict: meets ? "meets" : "falls short",
    statement: `The system was pumped down to ${microns.toFixed(0)} microns; ${most.toFixed(0)} or less is needed.`,
    figures: [{ label: "vacuum", value: microns, unit: "micron", decimals: 0 }],
    nextStep: meets ? null : "Keep pumping; remove valve cores, use short wide hoses, renew the pump oil.",
    caution: refrigerantCautions.openCircuit,
    inputs: ["vacuumMicrons"],
  });
}

function holdFinding(readings: EvacuationReadings, most: number): Finding {
  const rule = refrigerantRules.evacuationHold;
  const { heldMicrons, holdMinutes, makerHoldMinutes } = readings;
  const inputs = ["heldMicrons", "holdMinutes", "makerHoldMinutes"] as const;
  if (heldMicrons === null || holdMinutes === null || makerHoldMinutes === null) {
    return notMeasured(
      rule,
      inputs.filter((field) => readings[field] === null),
      "Close the pump off, wait the maker's hold time, and read the micron gauge again.",
    );
  }
  const microns = inRange("heldMicrons", heldMicrons, "micron", 760_000);
  const held = inRange("holdMinutes", holdMinutes, "min", 2_880);
  const needed = inRange("makerHoldMinutes", makerHoldMinutes, "min", 2_880);
  const tooShort = held < needed;
  const verdict = microns > most ? "falls short" : tooShort ? "can't tell" : "meets";
  return finding(rule, {
    verdict,
    statement: `After ${held.toFixed(0)} min closed off the vacuum stood at ${microns.toFixed(0)} microns; the maker asks for ${needed.toFixed(0)} min at ${most.toFixed(0)} or less.`,
    figures: [
      { label: "vacuum after hold", value: microns, unit: "micron", decimals: 0 },
      { label: "hold", value: held, unit: "min", decimals: 0 },
    ],
    nextStep:
      verdict === "meets"
        ? null
        : verdict === "can't tell"
          ? `Hold ${(needed - held).toFixed(0)} min more and read again.`
          : "A rise that levels off is moisture: pump on. A rise that goes on is a leak: find it with nitrogen.",
    caution: refrigerantCautions.openCircuit,
    inputs,
  });
}

/** Readings of a nitrogen pressure test. `null`: not given. Temperatures are those of the gas in the lines. */
export type PressureTestReadings = {
  readonly startPressurePsig: number | null;
  readonly startTempF: number | null;
  readonly endPressurePsig: number | null;
  readonly endTempF: number | null;
  readonly sitePressurePsia: number | null;
  /** Expanded uncertainty (k = 2) of the drop, psi. */
  readonly dropUncertaintyPsi: number | null;
};

/**
 * Judges a nitrogen pressure test after correcting it for temperature.
 *
 * @param readings - Gauge pressures 0 to 1,000 psig, temperatures −40 to 160 °F, atmospheric pressure 6 to 17 psia.
 * @param limits - The company limits in force.
 * @returns One finding.
 * @throws {@link OutOfRangeError} for a reading outside its range, naming it.
 * @see {@link expectedTestPressurePsig} (recalled); the tolerance: common practice, no source.
 */
export function pressureTestFindings(readings: PressureTestReadings, limits: Limits): readonly Finding[] {
  const rule = refrigerantRules.pressureTest;
  const { startPressurePsig, startTempF, endPressurePsig, endTempF, sitePressurePsia } = readings;
  const inputs = [
    "startPressurePsig",
    "startTempF",
    "endPressurePsig",
    "endTempF",
    "sitePressurePsia",
  ] as const;
  if (
    startPressurePsig === null ||
    startTempF === null ||
    endPressurePsig === null ||
    endTempF === null ||
    sitePressurePsia === null
  ) {
    return [
      notMeasured(
        rule,
        inputs.filter((field) => readings[field] === null),
        "Note pressure and line temperature at the start and at the end of the test.",
      ),
    ];
  }
  const end = inRange("endPressurePsig", endPressurePsig, "psig", 1_000);
  const expected = expectedTestPressurePsig({ startPressurePsig, startTempF, endTempF, sitePressurePsia });
  const drop = expected - end;
  const most = limits["refrigerant.pressureTestTolerance"];
  const uncertainty =
    readings.dropUncertaintyPsi === null
      ? null
      : inRange("dropUncertaintyPsi", readings.dropUncertaintyPsi, "psi", 100);
  const verdict = verdictOnInterval(drop, uncertainty ?? 0, { min: null, max: most });
  return [
    finding(rule, {
      verdict,
      statement: `A tight system would read ${expected.toFixed(1)} psig at ${endTempF.toFixed(0)} °F; it read ${end.toFixed(1)} psig, a drop of ${drop.toFixed(1)} psi where ${most.toFixed(1)} is allowed.`,
      figures: [
        {
          label: "drop, temperature corrected",
          value: drop,
          unit: "psi",
          decimals: 1,
          ...(uncertainty === null ? {} : { uncertainty }),
        },
        { label: "expected reading", value: expected, unit: "psig", decimals: 1 },
      ],
      nextStep:
        verdict === "meets"
          ? null
          : verdict === "can't tell"
            ? "Let it stand longer, or read it with a finer gauge."
            : "Find the leak with soap solution or an electronic detector, repair, and test again.",
      caution: refrigerantCautions.nitrogen,
      inputs,
    }),
  ];
}

function inRange(field: string, value: number, unit: string, max: number): number {
  if (!(value >= 0 && value <= max)) throw new OutOfRangeError(field, value, unit, 0, max);
  return value;
}
