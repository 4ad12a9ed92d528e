import { instrumentUse } from "@/lib/db/instrument-use";
import { instruments } from "@/lib/db/instruments";
import { thermostatDrift } from "@/lib/db/thermostat-drift";
import { withTenant } from "@/lib/db/with-tenant";
import { dayAfter } from "@/lib/domain/days";
import { type InstrumentReport, instrumentReport } from "@/lib/domain/instrument-report";
import type { TenantScope } from "@/lib/domain/scope";
import type { ThermostatDrift } from "@/lib/domain/thermostat-drift";
import { companyToday } from "./company-today";

/** Two years. */
const DAYS_LOOKED_BACK = 731;

export type InstrumentsReport = {
  readonly instruments: readonly InstrumentReport[];
  readonly thermostats: readonly ThermostatDrift[];
};

/** Which instruments and thermostats drift, are out of calibration, or are shared by odd readings, over the last two years. */
export function instrumentsReport(scope: TenantScope, now: Date): Promise<InstrumentsReport> {
  return withTenant(scope, async () => {
    const today = await companyToday(scope, now);
    const from = dayAfter(today, -DAYS_LOOKED_BACK);
    const use = await instrumentUse(scope).counted(from);
    const corrections = await instrumentUse(scope).corrections(from);
    return {
      instruments: instrumentReport(await instruments(scope).list(), use, corrections, today),
      thermostats: await thermostatDrift(scope, from),
    };
  });
}
