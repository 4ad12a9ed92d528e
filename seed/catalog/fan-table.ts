import type { FanRow } from "@/lib/domain/catalog";

/** External static pressures the invented fan tables list, in. w.c. */
const STATICS = [0.1, 0.3, 0.5, 0.7, 0.9] as const;

/**
 * An invented fan table. Airflow falls by `lossPctPerStep` at each step of static pressure from the second on.
 *
 * Power is the air power over an efficiency of 0.38 plus 60 W at 1,000 cfm (∝ cfm²) for the cabinet: plain arithmetic.
 */
export function fanTable(
  settings: readonly { readonly name: string; readonly cfm: number }[],
  lossPctPerStep: number,
): readonly FanRow[] {
  return settings.flatMap(({ name, cfm }) =>
    STATICS.map((externalStaticInWc, step): FanRow => {
      const airflowCfm = Math.round((cfm * (1 + (lossPctPerStep / 100) * (2 - step))) / 5) * 5;
      // 1 W moves 8.5 cfm against 1 in. w.c. (physics: 1 cfm · 1 in. w.c. = 0.1175 W).
      const airPowerW = 0.1175 * airflowCfm * externalStaticInWc;
      const powerW = Math.round(airPowerW / 0.38 + 60 * (airflowCfm / 1_000) ** 2);
      return { airflowSetting: name, externalStaticInWc, airflowCfm, powerW };
    }),
  );
}
