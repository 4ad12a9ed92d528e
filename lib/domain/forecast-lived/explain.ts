import { HOUSE_ASSUMPTION_WORDS } from "../forecast/assumptions";
import { fitSentences } from "./fit-words";
import type { AssumptionTried, ForecastLived } from "./kept";

/** What would explain that a house is not as forecast: what the fit found; where it found nothing, the assumption that carries it most. */
export function explanations(
  held: Pick<ForecastLived, "fit" | "assumptions" | "lived" | "forecast">,
): readonly string[] {
  const fromFit =
    held.fit === null ? [] : fitSentences(held.fit).filter((one) => !one.startsWith("The log agrees"));
  if (fromFit.length > 0) return fromFit;
  const carried = carrying(held);
  return carried === null ? [] : [carried];
}

/** The assumption whose least or most comes nearest to what was lived; `null` when none comes nearer than the forecast itself. */
export function carrying({
  assumptions,
  lived,
  forecast,
}: Pick<ForecastLived, "assumptions" | "lived" | "forecast">): string | null {
  const target = lived.hoursAboveLimit;
  const ends = assumptions.flatMap((one) => [
    { one, end: one.low, hours: one.hoursAtLow },
    { one, end: one.high, hours: one.hoursAtHigh },
  ]);
  const now = forecast.hoursAboveLimit.central;
  const best = ends.reduce<(typeof ends)[number] | null>(
    (nearest, end) =>
      Math.abs(end.hours - target) < Math.abs((nearest?.hours ?? now) - target) ? end : nearest,
    null,
  );
  if (best === null) return null;
  return `Of the assumptions ${label(best.one)} carries it most: with ${number(best.end)} ${best.one.unit} instead of ${number(best.one.value)} it would have been ${Math.round(best.hours).toLocaleString("en-US")} h instead of ${Math.round(now).toLocaleString("en-US")} h.`;
}

function label({ name }: AssumptionTried): string {
  const words: Readonly<Record<string, { readonly label: string }>> = HOUSE_ASSUMPTION_WORDS;
  const found = words[name]?.label ?? name;
  return `“${found}”`;
}

function number(value: number): string {
  return Number(value.toPrecision(3)).toLocaleString("en-US");
}
