"use client";

// Longer than usual because one state goes through all steps: block, mapping, mended cells, answer, undo.
import { useMemo, useState } from "react";
import { heard } from "@/components/forms/still-there";
import { Button, LinkButton } from "@/components/ui/button";
import { RadioRow } from "@/components/ui/choice-fields";
import { Notice } from "@/components/ui/notice";
import { TextArea } from "@/components/ui/text-field";
import type { EquipmentModel } from "@/lib/domain/catalog";
import {
  type Block,
  checkTable,
  fanLines,
  mappingProblems,
  readBlock,
  suggestMapping,
  TABLE_KIND_NAMES,
  type TableKind,
  type TableMapping,
} from "@/lib/schemas/catalog-table";
import { BlockNotes } from "./block-notes";
import { ImportMapping } from "./import-mapping";
import { ImportPreview } from "./import-preview";
import type { Kept } from "./kept";
import { SettingNames } from "./setting-names";
import { tableAsText } from "./table-as-text";

type Imported = { readonly modelId: string; readonly kept: number; readonly refused: number };
type Props = {
  readonly model: EquipmentModel;
  readonly send: (input: unknown) => Promise<Kept<Imported>>;
  readonly takeBack: (input: unknown) => Promise<Kept<string>>;
};

const NOTHING = { performance: [], fan: [] };

/** Paste or drop, say which column is what, look at every cell, keep the good rows, mend the rest. */
export function ImportTable({ model, send, takeBack }: Props) {
  const [kind, setKind] = useState<TableKind>("performance");
  const [how, setHow] = useState<"replace" | "add">("replace");
  const [text, setText] = useState("");
  const [block, setBlock] = useState<Block | null>(null);
  const [mapping, setMapping] = useState<TableMapping>({});
  const [problem, setProblem] = useState<string | null>(null);
  const [done, setDone] = useState<Imported | null>(null);
  const [undone, setUndone] = useState(false);
  const [busy, setBusy] = useState(false);
  /** The version the next import follows. */
  const [base, setBase] = useState<string>(model.id);

  const take = (given: string, wanted: TableKind) => {
    setText(given);
    setProblem(null);
    setDone(null);
    const found = readBlock(given);
    if ("kind" in found) {
      setBlock(null);
      setProblem(given === "" ? null : found.reason);
      return;
    }
    const down = wanted === "fan" ? fanLines(found) : found;
    setBlock(down);
    setMapping(suggestMapping(wanted, down));
  };
  const drop = async (file: File | undefined) => {
    if (file === undefined) return;
    if (file.size > 4_000_000) setProblem("This file is larger than 4 MB. Save one table as CSV.");
    else take(await file.text(), kind);
  };
  const table = useMemo(
    () => (block === null ? null : checkTable(kind, block, mapping, how === "add" ? model : NOTHING)),
    [block, kind, mapping, how, model],
  );
  const unmapped = block === null ? [] : mappingProblems(kind, mapping);
  const call = async <T,>(work: () => Promise<Kept<T>>, then: (value: T) => void) => {
    setBusy(true);
    try {
      const answer = heard(await work());
      if (answer.ok) then(answer.value);
      setProblem(answer.ok ? null : answer.message);
    } catch {
      setProblem("No connection to the server. The block is still here; try again when there is one.");
    }
    setBusy(false);
  };

  return (
    <div className="grid gap-5">
      <RadioRow
        name="kind"
        label="Which table"
        value={kind}
        options={[
          { value: "performance", label: "Performance table" },
          { value: "fan", label: "Fan table" },
        ]}
        onChange={(event) => {
          const next = event.target.value === "fan" ? "fan" : "performance";
          setKind(next);
          take(text, next);
        }}
      />
      {/* biome-ignore lint/a11y/noStaticElementInteractions: dropping is a second way beside the file field */}
      <div
        className="grid gap-3"
        onDragOver={(event) => event.preventDefault()}
        onDrop={(event) => {
          event.preventDefault();
          void drop(event.dataTransfer.files[0]);
        }}
      >
        <TextArea
          name="block"
          label="Paste the table with its headings"
          hint="Cells copied from a spreadsheet, or lines with commas or semicolons. A CSV file may be dropped here."
          rows={6}
          spellCheck={false}
          value={text}
          onChange={(event) => take(event.target.value, kind)}
        />
        <div className="flex flex-wrap items-center gap-3">
          <label className="text-sm">
            <span className="mr-2 font-semibold">Or choose a CSV file</span>
            <input
              type="file"
              accept=".csv,.tsv,.txt,text/*"
              onChange={(event) => void drop(event.target.files?.[0])}
            />
          </label>
          <Button onClick={() => take(tableAsText(kind, model), kind)}>Edit the rows there are</Button>
        </div>
      </div>
      {problem === null ? null : <Notice kind="problem" title={problem} />}
      {done === null ? null : (
        <Notice
          kind="done"
          title={
            undone
              ? "Taken back: the model is as it was."
              : `${done.kept} rows kept, ${done.refused} not kept.`
          }
          action={
            undone ? undefined : (
              <div className="flex flex-wrap gap-2">
                <LinkButton href={`/catalog/${done.modelId}`}>See the model</LinkButton>
                <Button
                  busy={busy}
                  onClick={() =>
                    call(
                      () => takeBack({ modelId: done.modelId }),
                      (id) => {
                        setUndone(true);
                        setBase(id);
                      },
                    )
                  }
                >
                  Undo the import
                </Button>
              </div>
            )
          }
        >
          {done.refused > 0 && !undone
            ? "The refused cells are still below: mend them and import again."
            : undefined}
        </Notice>
      )}
      {block === null || table === null ? null : (
        <>
          <BlockNotes kind={kind} block={block} mapping={mapping} onBlock={setBlock} />
          <ImportMapping
            kind={kind}
            headings={block.headings}
            mapping={mapping}
            problems={unmapped}
            onMapping={setMapping}
          />
          {unmapped.length > 0 ? null : (
            <>
              {kind === "performance" ? (
                <SettingNames
                  model={model}
                  block={block}
                  mapping={mapping}
                  onRenamed={(rows, names) => {
                    setBlock(rows);
                    setMapping(names);
                  }}
                />
              ) : null}
              <ImportPreview
                kind={kind}
                block={block}
                mapping={mapping}
                table={table}
                onCell={(row, column, value) =>
                  setBlock({
                    ...block,
                    rows: block.rows.map((one, index) =>
                      index === row
                        ? { ...one, cells: one.cells.map((cell, at) => (at === column ? value : cell)) }
                        : one,
                    ),
                  })
                }
              />
              <RadioRow
                name="how"
                label="What happens to the rows the model has"
                value={how}
                options={[
                  { value: "replace", label: "Replace the whole table" },
                  { value: "add", label: "Add these rows to it" },
                ]}
                onChange={(event) => setHow(event.target.value === "add" ? "add" : "replace")}
              />
              <div>
                <Button
                  variant="primary"
                  busy={busy}
                  busyText="Importing…"
                  disabled={table.goodRows === 0}
                  onClick={() =>
                    call(
                      () =>
                        send({
                          modelId: base,
                          kind,
                          how,
                          headings: block.headings,
                          rows: block.rows,
                          mapping,
                        }),
                      (value) => {
                        setDone(value);
                        setBase(value.modelId);
                        setUndone(false);
                      },
                    )
                  }
                >
                  Import {table.goodRows} of {table.allRows} rows into the {TABLE_KIND_NAMES[kind]}
                </Button>
              </div>
            </>
          )}
        </>
      )}
    </div>
  );
}
