import { numberText, type Range, verdictOnMeasured } from "@/lib/engineering/airflow";
import type { Figure, Verdict } from "../findings";
import { decidingReading } from "./deciding-reading";
import { READINGS, type ReadingName } from "./readings";
import type { UncertainValue } from "./with-uncertainty";

/** A result with the readings whose accuracy is not known: its uncertainty leaves these out. */
export type Result = {
  readonly result: UncertainValue;
  readonly unknownAccuracy: readonly ReadingName[];
};

/**
 * The verdict on a result. Where the accuracy of an instrument is not known, a value within the company's band
 * around a limit gets no verdict either.
 *
 * @param bandPct - Width of the band, % of the limit, 0 to 100.
 */
export function judge({ result, unknownAccuracy }: Result, range: Range, bandPct: number): Verdict {
  const { value, expandedUncertainty } = result;
  const known = verdictOnMeasured({ value, uncertainty: expandedUncertainty }, range, bandPct);
  if (unknownAccuracy.length === 0) return known;
  const banded = verdictOnMeasured({ value, uncertainty: null }, range, bandPct);
  return known === banded ? known : "can't tell";
}

/** Which reading would settle a "can't tell", and to what accuracy. */
export function whatWouldSettle({ result, unknownAccuracy }: Result, range: Range): string {
  if (unknownAccuracy.length > 0) {
    return `Choose the instrument of the ${listed(unknownAccuracy)}, so that its accuracy is known.`;
  }
  // Only readings can be taken better; table values cannot.
  const budget = result.budget.filter((line) => isReading(line.input));
  const deciding = decidingReading({ ...result, budget }, range);
  switch (deciding.kind) {
    case "one reading": {
      const { words, unit } = wordsOf(deciding.input);
      return `${/^[aeiou]/.test(words) ? "An" : "A"} ${words} to ±${deciding.accuracyText} ${unit} would settle it, if the result stays the same.`;
    }
    case "several readings": {
      const largest = deciding.inputs.slice(0, 2).filter(isReading);
      if (largest.length > 0)
        return `No single better reading would settle it; the whole uncertainty must be ${numberText(deciding.times, 1)} times smaller, beginning with the ${listed(largest)}.`;
      return "The tables behind this are not exact enough to settle it: decide on other evidence.";
    }
    case "nothing":
      return "The result lies on the limit itself: no instrument would settle it; decide on other evidence.";
  }
}

/**
 * "33,580 ± 2,100 Btu/h", with a remark when an accuracy is not known.
 *
 * @param decimals - Digits after the point, 0 to 6.
 */
export function resultText({ result, unknownAccuracy }: Result, unit: string, decimals: number): string {
  const value = numberText(result.value, decimals);
  const known =
    result.budget.length === 0 && unknownAccuracy.length > 0
      ? ""
      : ` ± ${numberText(result.expandedUncertainty, decimals)}`;
  const remark =
    unknownAccuracy.length === 0
      ? ""
      : ` (accuracy of the instrument not known for the ${listed(unknownAccuracy)})`;
  return `${value}${known}${unit === "" ? "" : ` ${unit}`}${remark}`;
}

/**
 * The figure of a result; its uncertainty is shown only when it is complete.
 *
 * @param decimals - Digits after the point, 0 to 6.
 */
export function resultFigure(label: string, said: Result, unit: string, decimals: number): Figure {
  const base = { label, value: said.result.value, unit, decimals };
  return said.unknownAccuracy.length > 0 ? base : { ...base, uncertainty: said.result.expandedUncertainty };
}

function listed(names: readonly ReadingName[]): string {
  const words = names.map((name) => READINGS[name].words);
  const last = words.at(-1) ?? "";
  return words.length < 2 ? last : `${words.slice(0, -1).join(", ")} and ${last}`;
}

function isReading(name: string): name is ReadingName {
  return name in READINGS;
}

function wordsOf(name: string): { readonly words: string; readonly unit: string } {
  return isReading(name) ? READINGS[name] : { words: name, unit: "" };
}
