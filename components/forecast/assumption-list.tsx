"use client";

import { useId } from "react";
import { Button } from "@/components/ui/button";
import { numberText } from "@/lib/charts/number-text";

/** An assumption as the page shows it: where it is put, between what it may be put, and why. */
export type ShownAssumption = {
  readonly of: "house" | "system";
  readonly name: string;
  readonly label: string;
  readonly value: number;
  readonly unit: string;
  readonly why: string;
  readonly min: number;
  readonly max: number;
  readonly decimals: number;
  /** Between what an honest person might put it; `null` where the answer hardly depends on it. */
  readonly spread: { readonly low: number; readonly high: number } | null;
  readonly isSet: boolean;
};

/** Units that do not read well after a number. */
const UNIT_WORDS: Readonly<Record<string, string>> = { "1/h": "an hour", ratio: "times" };

type Props = {
  readonly assumptions: readonly ShownAssumption[];
  /** `null` puts it back as assumed. */
  readonly set: (one: ShownAssumption, value: number | null) => void;
};

/** Assumptions with a slider each; the forecast follows while one moves. */
export function AssumptionList({ assumptions, set }: Props) {
  return (
    <ul className="grid gap-x-8 gap-y-4 lg:grid-cols-2">
      {assumptions.map((one) => (
        <li key={`${one.of} ${one.name}`}>
          <Assumption one={one} set={(value) => set(one, value)} />
        </li>
      ))}
    </ul>
  );
}

function Assumption({
  one,
  set,
}: {
  readonly one: ShownAssumption;
  readonly set: (value: number | null) => void;
}) {
  const id = useId();
  const written = `${numberText(one.value, one.decimals)} ${UNIT_WORDS[one.unit] ?? one.unit}`.trim();
  return (
    <div>
      <div className="flex flex-wrap items-baseline justify-between gap-x-3">
        <label htmlFor={id} className="font-medium">
          {one.label}
        </label>
        <output htmlFor={id} className="whitespace-nowrap">
          {written}
        </output>
      </div>
      <input
        id={id}
        type="range"
        className="block h-8 w-full accent-[var(--color-accent)]"
        min={one.min}
        max={one.max}
        step={10 ** -one.decimals}
        value={Math.min(one.max, Math.max(one.min, one.value))}
        aria-valuetext={written}
        aria-describedby={`${id}-why`}
        onChange={(event) => set(Number(event.target.value))}
      />
      <p id={`${id}-why`} className="text-sm text-muted">
        {one.why}
        {one.spread === null
          ? "."
          : `; drawn between ${numberText(one.spread.low, one.decimals)} and ${numberText(one.spread.high, one.decimals)}.`}
      </p>
      {one.isSet ? <Button onClick={() => set(null)}>Back to what was assumed</Button> : null}
    </div>
  );
}
