import {
  type ForecastChanges,
  HOUSE_ASSUMPTION_WORDS,
  SYSTEM_ASSUMPTIONS,
  type SystemAssumptionName,
} from "@/lib/domain/forecast";
import type { AssumptionName } from "@/lib/engineering/simulation";
import type { ShownAssumption } from "./assumption-list";
import type { OptionsForecast } from "./use-options-forecast";

/** What matters most first: the house's uncertain numbers and the setpoint; the others apart. */
export function shownAssumptions({ run, ready, changes }: OptionsForecast): {
  readonly first: readonly ShownAssumption[];
  readonly others: readonly ShownAssumption[];
} {
  const house = run.assumptions.map((one): ShownAssumption => {
    const set = changes.house[one.name];
    return {
      of: "house",
      ...one,
      ...HOUSE_ASSUMPTION_WORDS[one.name],
      value: set ?? one.value,
      why: set === undefined ? one.why : `set here; was: ${one.why}`,
      spread: set === undefined && one.low < one.high ? { low: one.low, high: one.high } : null,
      isSet: set !== undefined,
    };
  });
  const all = ready.flatMap(({ setup }) => setup.assumptions);
  const system = all
    .filter((one, place) => all.findIndex((other) => other.name === one.name) === place)
    .map((one): ShownAssumption => {
      const set = changes.system[one.name];
      return {
        of: "system",
        ...one,
        ...bounds(one.name),
        value: set ?? one.value,
        spread: null,
        isSet: set !== undefined,
      };
    });
  const leads = (one: ShownAssumption) =>
    one.spread !== null || one.isSet || one.name === "coolingSetpointF" || one.name === "occupants";
  const both = [...house, ...system];
  return { first: both.filter(leads), others: both.filter((one) => !leads(one)) };
}

function bounds(name: SystemAssumptionName) {
  const { min, max, decimals } = SYSTEM_ASSUMPTIONS[name];
  return { min, max, decimals };
}

/** The changes with one more, or with one taken back. */
export function withChange(
  changes: ForecastChanges,
  { of, name }: Pick<ShownAssumption, "of" | "name">,
  value: number | null,
): ForecastChanges {
  const { [name as AssumptionName & SystemAssumptionName]: _old, ...rest } = changes[of] as Readonly<
    Record<string, number>
  >;
  return { ...changes, [of]: value === null ? rest : { ...rest, [name]: value } };
}
