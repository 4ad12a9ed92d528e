"use client";

import { Button } from "@/components/ui/button";
import { SelectField } from "@/components/ui/choice-fields";
import { NumberField } from "@/components/ui/number-field";
import { TextField } from "@/components/ui/text-field";

export type RowColumn = {
  readonly key: string;
  readonly label: string;
  /** A number's unit; `null` for words. */
  readonly unit: string | null;
  readonly options?: readonly { readonly value: string; readonly label: string }[];
};
export type TextRow = Readonly<Record<string, string>>;

type Props = {
  readonly name: string;
  readonly title: string;
  readonly columns: readonly RowColumn[];
  readonly rows: readonly TextRow[];
  readonly onRows: (rows: readonly TextRow[]) => void;
  readonly problem: (field: string) => string | undefined;
  readonly addText: string;
};

/** A short list in a form: one line a thing, lines added and taken away. */
export function RowsEditor({ name, title, columns, rows, onRows, problem, addText }: Props) {
  const set = (index: number, key: string, value: string) =>
    onRows(rows.map((row, at) => (at === index ? { ...row, [key]: value } : row)));
  const own = problem(name);
  return (
    <fieldset id={`field-${name}`} tabIndex={-1} className="min-w-0 border-t border-rule pt-3">
      <legend className="float-left mb-2 w-full font-semibold">{title}</legend>
      {own === undefined ? null : <p className="clear-both mb-2 text-sm font-semibold text-short">{own}</p>}
      <ol className="clear-both grid gap-3">
        {rows.map((row, index) => (
          <li
            // biome-ignore lint/suspicious/noArrayIndexKey: a line is its place
            key={index}
            className="grid grid-cols-[repeat(auto-fit,minmax(min(100%,9rem),1fr))] items-end gap-3 border-b border-rule pb-3"
          >
            {columns.map((column) => {
              const field = {
                id: `field-${name}.${index}.${column.key}`,
                name: `${name}.${index}.${column.key}`,
                label: `${column.label}, line ${index + 1}`,
                error: problem(`${name}.${index}.${column.key}`),
              };
              const value = row[column.key] ?? "";
              if (column.options !== undefined) {
                return (
                  <SelectField
                    key={column.key}
                    {...field}
                    placeholder="Choose"
                    options={column.options}
                    value={value}
                    onChange={(event) => set(index, column.key, event.target.value)}
                  />
                );
              }
              return column.unit === null ? (
                <TextField
                  key={column.key}
                  {...field}
                  value={value}
                  onChange={(event) => set(index, column.key, event.target.value)}
                />
              ) : (
                <NumberField
                  key={column.key}
                  {...field}
                  unit={column.unit}
                  value={value}
                  onTyped={(_, text) => set(index, column.key, text)}
                />
              );
            })}
            <Button variant="quiet" onClick={() => onRows(rows.filter((_, at) => at !== index))}>
              Remove line {index + 1}
            </Button>
          </li>
        ))}
      </ol>
      <Button className="mt-3" onClick={() => onRows([...rows, {}])}>
        {addText}
      </Button>
    </fieldset>
  );
}
