import { OutOfRangeError } from "../errors";
import type { Verdict } from "../findings";
import { quantity } from "../units";
import { targetSuperheatF } from "./charge";

/** What decides the target. `null`: not given. */
type TargetReadings = {
  readonly meteringDevice: "fixed orifice" | "expansion valve" | null;
  readonly indoorWetBulbF: number | null;
  readonly outdoorDryBulbF: number | null;
  readonly makerSuperheatF: number | null;
  readonly makerSubcoolingF: number | null;
};

/** A target with where it comes from; or why there is none, and whether that leaves the check open. */
export type ChargeTarget =
  | { readonly valueF: number; readonly from: string }
  | { readonly valueF: null; readonly why: string; readonly open: Verdict | null; readonly nextStep: string };

const makerSuperheat = quantity("makerSuperheatF", "Δ°F", 0, 60);
const makerSubcooling = quantity("makerSubcoolingF", "Δ°F", 0, 60);
// A reading no weather gives is refused; weather the method does not cover is an open question.
const believableWetBulb = quantity("indoorWetBulbF", "°F", 20, 110);
const believableOutdoor = quantity("outdoorDryBulbF", "°F", -60, 140);

/**
 * Target superheat: the maker's, or for a fixed orifice the charging formula's.
 *
 * @throws {@link OutOfRangeError} for an input outside its range, naming the field.
 */
export function superheatTarget(readings: TargetReadings): ChargeTarget {
  if (readings.makerSuperheatF !== null) {
    return { valueF: makerSuperheat(readings.makerSuperheatF), from: "the maker" };
  }
  if (readings.meteringDevice === null) {
    return {
      valueF: null,
      why: "the metering device is not given",
      open: "not measured",
      nextStep: "Enter the metering device, or the maker's target superheat.",
    };
  }
  if (readings.meteringDevice === "expansion valve") {
    return {
      valueF: null,
      why: "an expansion valve holds its own superheat and the maker gives no target",
      open: null,
      nextStep: "Judge the charge by subcooling.",
    };
  }
  if (readings.indoorWetBulbF === null || readings.outdoorDryBulbF === null) {
    return {
      valueF: null,
      why: "the fixed-orifice target needs indoor wet bulb and outdoor dry bulb",
      open: "not measured",
      nextStep: "Read the return wet bulb and the outdoor dry bulb.",
    };
  }
  const conditions = {
    indoorWetBulbF: believableWetBulb(readings.indoorWetBulbF),
    outdoorDryBulbF: believableOutdoor(readings.outdoorDryBulbF),
  };
  try {
    const valueF = targetSuperheatF(conditions);
    return { valueF, from: "the fixed-orifice formula" };
  } catch (error) {
    if (!(error instanceof OutOfRangeError)) throw error;
    return {
      valueF: null,
      why: `there is no valid test at these conditions (${error.message})`,
      open: "can't tell",
      nextStep: "Weigh the charge in, or return in weather the maker's chart covers.",
    };
  }
}

/** Target subcooling: the maker's. */
export function subcoolingTarget(readings: TargetReadings): ChargeTarget {
  if (readings.makerSubcoolingF !== null) {
    return { valueF: makerSubcooling(readings.makerSubcoolingF), from: "the maker" };
  }
  if (readings.meteringDevice === "fixed orifice") {
    return {
      valueF: null,
      why: "a fixed orifice is charged by superheat",
      open: null,
      nextStep: "Judge the charge by superheat.",
    };
  }
  return {
    valueF: null,
    why: "the maker's target is not entered",
    open: "not measured",
    nextStep: "Enter the target subcooling from the nameplate or the maker's chart.",
  };
}
