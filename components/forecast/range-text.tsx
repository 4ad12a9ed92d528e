import { numberText } from "@/lib/charts/number-text";
import type { ForecastRange } from "@/lib/engineering/simulation";

export type RangeTextProps = {
  /** `null`: there is nothing of the kind. */
  readonly range: ForecastRange | null;
  readonly unit: string;
  readonly decimals: number;
};

/** A forecast number: with the house as assumed, and below it between what it lies for the houses and years drawn. */
export function RangeText({ range, unit, decimals }: RangeTextProps) {
  if (range === null) return <span className="text-muted">none</span>;
  const [low, high] = [numberText(range.low, decimals), numberText(range.high, decimals)];
  return (
    <span className="block">
      <span className="whitespace-nowrap">
        {numberText(range.central, decimals)}
        {unit === "" ? null : <span className="text-[0.8em] text-muted"> {unit}</span>}
      </span>
      {low === high ? null : (
        <span className="block whitespace-nowrap text-sm text-muted">
          {low} to {high}
        </span>
      )}
    </span>
  );
}
