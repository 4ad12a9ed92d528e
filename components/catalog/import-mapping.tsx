"use client";

import { SelectField } from "@/components/ui/choice-fields";
import { TextField } from "@/components/ui/text-field";
import { quantitiesOf, type TableKind, type TableMapping, unitsOf } from "@/lib/schemas/catalog-table";

type Props = {
  readonly kind: TableKind;
  readonly headings: readonly string[];
  readonly mapping: TableMapping;
  readonly problems: readonly { readonly quantity: string; readonly message: string }[];
  readonly onMapping: (mapping: TableMapping) => void;
};

const ONE_VALUE = "one value";

/** Which column is which of our quantities, and in what unit. */
export function ImportMapping({ kind, headings, mapping, problems, onMapping }: Props) {
  return (
    <section aria-labelledby="mapping" className="border border-rule bg-sheet p-4">
      <h2 id="mapping" className="mb-1 text-lg font-semibold">
        What the columns are
      </h2>
      <p className="mb-3 text-sm text-muted">
        Guessed from headings and values. Look it over before importing.
      </p>
      <div className="grid gap-4">
        {quantitiesOf(kind).map(({ key, label, family, need }) => {
          const mapped = mapping[key] ?? { column: null, constant: "", unit: null };
          const isOne = mapping[key] !== undefined && mapped.column === null;
          const set = (change: Partial<typeof mapped>) =>
            onMapping({ ...mapping, [key]: { ...mapped, ...change } });
          return (
            <div
              key={key}
              className="grid grid-cols-[repeat(auto-fit,minmax(min(100%,11rem),1fr))] items-start gap-3 border-b border-rule pb-3"
            >
              <SelectField
                name={`map-${key}`}
                label={label}
                optional={need === "never"}
                placeholder="Not in this block"
                options={[
                  ...headings.map((heading, index) => ({
                    value: String(index),
                    label: `Column: ${heading}`,
                  })),
                  { value: ONE_VALUE, label: "One value for the whole table" },
                ]}
                value={isOne ? ONE_VALUE : mapped.column === null ? "" : String(mapped.column)}
                error={problems.find(({ quantity }) => quantity === key)?.message}
                onChange={({ target }) => {
                  if (target.value === "") {
                    const { [key]: _gone, ...rest } = mapping;
                    onMapping(rest);
                  } else set({ column: target.value === ONE_VALUE ? null : Number(target.value) });
                }}
              />
              {isOne ? (
                <TextField
                  name={`value-${key}`}
                  label={`${label}: the value`}
                  value={mapped.constant}
                  onChange={(event) => set({ constant: event.target.value })}
                />
              ) : null}
              {family === null || mapping[key] === undefined ? null : (
                <SelectField
                  name={`unit-${key}`}
                  label={`${label}: unit`}
                  placeholder="Choose its unit"
                  options={unitsOf(family).map((value) => ({
                    value,
                    label: value === "MBtu/h" ? "MBtu/h (1,000 Btu/h)" : value,
                  }))}
                  value={mapped.unit ?? ""}
                  onChange={(event) => set({ unit: event.target.value || null })}
                />
              )}
            </div>
          );
        })}
      </div>
    </section>
  );
}
