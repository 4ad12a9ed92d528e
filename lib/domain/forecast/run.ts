import { isEngineeringError } from "@/lib/engineering/errors";
import {
  type ForecastInput,
  type HouseAssumption,
  type MemberYear,
  memberYear,
  prepareForecast,
  type UncertainNumber,
} from "@/lib/engineering/simulation";

/** What a forecast says while it runs; plain data, sent from a worker or over the wire. */
export type ForecastEvent =
  | {
      readonly kind: "ready";
      readonly years: number;
      readonly assumptions: readonly HouseAssumption[];
      readonly uncertain: readonly UncertainNumber[];
    }
  | { readonly kind: "year"; readonly year: MemberYear }
  /** An option whose year cannot be run even with the house as assumed; the others go on. */
  | { readonly kind: "refused"; readonly option: number; readonly problem: string }
  /** Nothing can be run: house and weather do not go together. */
  | { readonly kind: "failed"; readonly problem: string };

/**
 * Runs a share of a forecast's years, every option with the central house first. The one loop of browser worker and server; stop
 * between two events to cancel.
 *
 * @param share - Years `index`, `index + of`, …
 */
export function* forecastEvents(
  input: ForecastInput,
  share: { readonly index: number; readonly of: number },
): Generator<ForecastEvent, void, void> {
  const prepared = refusable(() => prepareForecast(input));
  if (typeof prepared === "string") {
    yield { kind: "failed", problem: prepared };
    return;
  }
  const { ensemble, hours, years } = prepared;
  const { assumptions, uncertain } = ensemble;
  yield { kind: "ready", years, assumptions, uncertain };
  const count = input.options.length;
  const refused = new Set<number>();
  for (let year = share.index; year < years; year += share.of) {
    const place = year % count;
    const option = input.options[place];
    const member = ensemble.members[Math.floor(year / count)];
    if (option === undefined || member === undefined || refused.has(place)) continue;
    const ran = refusable(() =>
      memberYear(option, { option: place, hours }, member, input.weather, input.humidityLimitPct),
    );
    if (typeof ran === "string") refused.add(place);
    yield typeof ran === "string"
      ? { kind: "refused", option: place, problem: ran }
      : { kind: "year", year: ran };
  }
}

function refusable<T extends object>(run: () => T): T | string {
  try {
    return run();
  } catch (error) {
    if (isEngineeringError(error)) return error.message;
    throw error;
  }
}
