import type { MoistAir } from "../air";
import type { CoilState } from "./coil-state";
import type { Approach, CoilTemperatureHeldSystem } from "./coil-system";
import { coilTemperatureHeld } from "./coil-temperature-held";
import {
  type CoolingRatios,
  coolingRatios,
  type EquipmentKind,
  type EquipmentLimitValues,
  totalMaxRatio,
} from "./cooling-ratios";

export const FITS = ["fits", "too big", "too small", "coil too cold"] as const;
export type Fit = (typeof FITS)[number];

export type AirflowSetting = { readonly label: string; readonly airflowCfm: number };
export type CapacitySetting = {
  readonly label: string;
  readonly heldTemperatureF: number;
  readonly capacityCeilingBtuh: number;
  readonly minimumCapacityBtuh: number;
};
export type Coil = {
  readonly a0LbPerH: number;
  readonly approach: Approach;
  readonly frostLimitF: number;
};

export type MapCell = {
  readonly airflow: AirflowSetting;
  readonly capacity: CapacitySetting;
  readonly state: CoilState;
  /** Capacity over load after the half-excess-latent rule. */
  readonly ratios: CoolingRatios;
  readonly fit: Fit;
  /** What decided it, in one plain sentence. */
  readonly reason: string;
};

/**
 * Every airflow setting with every capacity setting at one indoor state, each compared with the load.
 *
 * Coil too cold: the frost limit, not the setting, decides. Too small: total, sensible or latent under its limit.
 * Too big: total over the limit for the kind of equipment. Too big goes before too small. Otherwise it fits.
 *
 * @param input - Indoor air as it enters the coil; settings with the ranges of `coilTemperatureHeld`; design loads in Btu/h with the
 * ranges of `coolingRatios`.
 * @returns Cells, airflow settings outside, capacity settings inside, in the order given.
 * @throws {@link OutOfRangeError} or {@link ImpossibleStateError} as those functions.
 * @see `coilTemperatureHeld`, and ANSI/ACCA 3 Manual S-2014 for the limits (recalled).
 */
export function capacityMap(input: {
  readonly entering: MoistAir;
  readonly coil: Coil;
  readonly airflowSettings: readonly AirflowSetting[];
  readonly capacitySettings: readonly CapacitySetting[];
  readonly sensibleLoadBtuh: number;
  readonly latentLoadBtuh: number;
  readonly kind: EquipmentKind;
  readonly limits: EquipmentLimitValues;
}): readonly MapCell[] {
  return input.airflowSettings.flatMap((airflow) =>
    input.capacitySettings.map((capacity): MapCell => {
      const system: CoilTemperatureHeldSystem = { ...input.coil, ...capacity };
      const state = coilTemperatureHeld({
        entering: input.entering,
        airflowCfm: airflow.airflowCfm,
        system,
      });
      const ratios = coolingRatios({
        sensibleLoadBtuh: input.sensibleLoadBtuh,
        latentLoadBtuh: input.latentLoadBtuh,
        totalCapacityBtuh: state.totalBtuh,
        sensibleCapacityBtuh: Math.min(state.sensibleBtuh, state.totalBtuh),
      });
      const frostBoundAdpF = state.limitedBy === "frost limit" ? state.adpF : null;
      return { airflow, capacity, state, ratios, ...judgeFit({ ...input, ratios, frostBoundAdpF }) };
    }),
  );
}

/**
 * Whether a capacity fits the load, and what decided it.
 *
 * @param input - `ratios` from `coolingRatios`; `frostBoundAdpF`, °F 20 to 60, the coil surface where the frost limit decides, else
 * `null`; kind of equipment and limits in force.
 * @returns The fit and one plain sentence.
 * @see ANSI/ACCA 3 Manual S-2014 for the limits (recalled).
 */
export function judgeFit(input: {
  readonly ratios: CoolingRatios;
  readonly frostBoundAdpF: number | null;
  readonly kind: EquipmentKind;
  readonly limits: EquipmentLimitValues;
}): { readonly fit: Fit; readonly reason: string } {
  const { limits, kind, ratios, frostBoundAdpF } = input;
  if (frostBoundAdpF !== null) {
    return {
      fit: "coil too cold",
      reason: `The coil surface would have to go below its frost limit of ${frostBoundAdpF.toFixed(1)} °F.`,
    };
  }
  const short = (
    [
      ["Total", ratios.totalRatio, limits["equipment.totalMinRatio"]],
      ["Sensible", ratios.sensibleRatio, limits["equipment.sensibleMinRatio"]],
      ["Latent", ratios.latentRatio ?? Number.POSITIVE_INFINITY, limits["equipment.latentMinRatio"]],
    ] as const
  ).find(([, found, min]) => found < min);
  const max = totalMaxRatio(kind, limits);
  if (ratios.totalRatio > max) {
    return {
      fit: "too big",
      reason: `Total capacity is ${ratios.totalRatio.toFixed(2)} of the load; at most ${max.toFixed(2)} for ${kind} equipment.`,
    };
  }
  if (short !== undefined) {
    const [what, found, min] = short;
    return {
      fit: "too small",
      reason: `${what} capacity is ${found.toFixed(2)} of the load; at least ${min.toFixed(2)} is needed.`,
    };
  }
  return { fit: "fits", reason: `Total capacity is ${ratios.totalRatio.toFixed(2)} of the load.` };
}
