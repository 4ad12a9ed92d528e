"use client";

import { useId, useState } from "react";
import { Button } from "@/components/ui/button";
import { isoDayOf, spanOfDays } from "@/lib/charts/clock-days";

type Span = { readonly fromMs: number; readonly toMs: number };

/** The days to look at, typed: what dragging across the chart does, to the day. */
export function SpanForm({
  shown,
  timeZone,
  onChosen,
}: {
  readonly shown: Span;
  readonly timeZone: string;
  readonly onChosen: (span: Span) => void;
}) {
  const id = useId();
  const [from, setFrom] = useState(isoDayOf(shown.fromMs, timeZone));
  const [to, setTo] = useState(isoDayOf(shown.toMs, timeZone));
  const [problem, setProblem] = useState("");
  // What is shown has changed: its days are the ones to begin from.
  const [known, setKnown] = useState(shown);
  if (known.fromMs !== shown.fromMs || known.toMs !== shown.toMs) {
    setKnown(shown);
    setFrom(isoDayOf(shown.fromMs, timeZone));
    setTo(isoDayOf(shown.toMs, timeZone));
    setProblem("");
  }
  const choose = () => {
    const span = spanOfDays(from, to, timeZone);
    setProblem(span === null ? "Enter two days, the earlier one first." : "");
    if (span !== null) onChosen(span);
  };
  const day = (label: string, value: string, set: (value: string) => void) => (
    <label className="grid gap-1 text-sm" htmlFor={`${id}-${label}`}>
      {label}
      <input
        id={`${id}-${label}`}
        type="date"
        className="control"
        value={value}
        aria-describedby={problem === "" ? undefined : `${id}-problem`}
        aria-invalid={problem === "" ? undefined : true}
        onChange={(event) => set(event.target.value)}
        // The chart's own keys must not move it while a date is typed.
        onKeyDown={(event) => event.stopPropagation()}
      />
    </label>
  );
  return (
    <div className="no-print flex flex-wrap items-end gap-2">
      {day("First day", from, setFrom)}
      {day("Last day", to, setTo)}
      <Button onClick={choose}>Show these days</Button>
      {problem === "" ? null : (
        <p id={`${id}-problem`} role="alert" className="w-full text-sm text-short">
          {problem}
        </p>
      )}
    </div>
  );
}
