"use client";

import { useState } from "react";
import { TextField } from "@/components/ui/text-field";
import { accentContrast } from "@/lib/charts/accent-contrast";
import { AccentReport } from "./accent-report";

type Props = { readonly color: string; readonly error: string | undefined };

/** The company's color, typed or picked, with what becomes of it. */
export function AccentField({ color, error }: Props) {
  const [typed, setTyped] = useState(color);
  const readable = accentContrast(typed)?.brand ?? color;
  return (
    <div className="grid gap-4 sm:grid-cols-[14rem_minmax(0,1fr)]">
      <div>
        <TextField
          name="accentColor"
          label="Accent color"
          hint="For instance #1f4f7a. Used for links, buttons and the head of a packet."
          autoComplete="off"
          spellCheck={false}
          value={typed}
          onChange={(event) => setTyped(event.target.value)}
          error={error}
        />
        <label className="mt-3 flex items-center gap-3 text-sm">
          <input
            type="color"
            className="h-11 w-16 cursor-pointer border border-rule-strong bg-sheet p-1"
            value={readable}
            onChange={(event) => setTyped(event.target.value)}
          />
          Pick the accent color
        </label>
      </div>
      <AccentReport color={typed} />
    </div>
  );
}
