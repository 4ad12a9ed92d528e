"use client";

import { useState } from "react";

type Props = {
  readonly shown: readonly string[];
  readonly choices: readonly { readonly key: string; readonly label: string }[];
};

/** Which columns are shown, sent with the filters as one word list. The number always stays. */
export function ColumnChoice({ shown, choices }: Props) {
  const [chosen, setChosen] = useState(shown);
  return (
    <details className="col-span-2 md:col-span-1">
      <summary className="cursor-pointer py-2 text-sm font-semibold">Columns</summary>
      <input type="hidden" name="columns" value={chosen.join(",")} />
      <fieldset className="flex flex-wrap gap-x-4">
        <legend className="sr-only">Columns shown</legend>
        {choices
          .filter(({ key }) => key !== "number")
          .map(({ key, label }) => (
            <label key={key} className="flex min-h-9 cursor-pointer items-center gap-2 text-sm">
              <input
                type="checkbox"
                className="size-5 accent-accent"
                checked={chosen.includes(key)}
                onChange={(event) =>
                  setChosen(
                    event.currentTarget.checked ? [...chosen, key] : chosen.filter((one) => one !== key),
                  )
                }
              />
              {label}
            </label>
          ))}
      </fieldset>
    </details>
  );
}
