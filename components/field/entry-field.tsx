import type { ChangeEvent } from "react";
import { Button } from "@/components/ui/plain-button";
import { charactersIn, keepableText, longerThan, MOST_TEXT } from "@/lib/domain/field-range";
import type { FieldDef, TextFieldDef } from "@/lib/domain/fields";
import type { PlainValue } from "@/lib/domain/merge-fields";
import { foundKey } from "@/lib/domain/stages/startup-found";
import { otherStageKey, type StartupKey, startupField } from "@/lib/domain/startup-walk";
import { AirflowHelp } from "./airflow-help";
import { ChoiceButtons } from "./choice-buttons";
import { ClockRow, isTimed } from "./clock-row";
import { NumberEntry } from "./number-entry";
import { fieldAt, SendMark } from "./send-mark";
import type { Work } from "./use-job";
import { phone } from "./use-phone";

type Props = { readonly work: Work; readonly name: StartupKey; readonly isFirst: boolean };

/** One field, drawn from its definition, with where its value is and what helps to fill it. */
export function EntryField({ work, name, isFirst }: Props) {
  const { job, draft, state, values } = work;
  const field: FieldDef = startupField(name);
  const value = values[name] ?? null;
  const at = fieldAt(draft, name, state.sending, value === null);
  const held = draft.pending[name]?.held ?? null;
  const found = values[foundKey(name)] ?? null;
  const set = (next: PlainValue) => void phone().enter(job.id, name, next);
  return (
    <div className="grid gap-2">
      <div className="flex flex-wrap items-baseline justify-between gap-2">
        <label htmlFor={`entry-${name}`} id={`label-${name}`} className="text-lg font-semibold">
          {field.label}
        </label>
        {at === null ? null : <SendMark at={at} />}
      </div>
      {field.help === undefined ? null : <p className="text-sm text-muted">{field.help}</p>}
      {found === null ? null : (
        <p className="text-sm">
          As found: <strong>{words(field, found)}</strong>
          {found === value ? ", not measured again" : ""}
        </p>
      )}
      <Entry field={field} {...{ work, name, value, set, isFirst }} />
      {held?.why === "conflict" ? (
        <p role="alert" className="text-sm font-semibold text-short">
          Someone else entered {words(field, held.theirs)}.{" "}
          <button
            type="button"
            className="text-link min-h-11"
            onClick={() => void phone().takeTheirs(job.id, name)}
          >
            Take that
          </button>{" "}
          <button
            type="button"
            className="text-link min-h-11"
            onClick={() => void phone().keepMine(job.id, name)}
          >
            Keep mine
          </button>
        </p>
      ) : null}
      {held?.why === "problem" && field.kind !== "number" ? (
        <p role="alert" className="text-sm font-semibold text-short">
          {held.message}
        </p>
      ) : null}
      {isTimed(name) ? <ClockRow work={work} name={name} /> : null}
      {name.endsWith("AirflowCfm") ? <AirflowHelp work={work} name={name} /> : null}
      <CopyOther work={work} name={name} />
    </div>
  );
}

/** Longer texts get several lines. */
const ONE_LINE = 300;
/** A setting's name, where no list of them is known. */
const ONE_NAME = 200;
/** From this share of its room on a text says how long it is. */
const NEARLY = 0.8;

type EntryProps = Props & {
  readonly field: FieldDef;
  readonly value: PlainValue;
  readonly set: (value: PlainValue) => void;
};

function Entry({ work, name, isFirst, field, value, set }: EntryProps) {
  switch (field.kind) {
    case "number":
      return <NumberEntry {...{ work, name, field, value, isFirst }} />;
    case "choice":
      return (
        <ChoiceButtons
          name={name}
          options={field.options}
          value={value}
          choose={set}
          disabled={work.job.isSigned}
        />
      );
    case "yes-no":
      return (
        <ChoiceButtons
          name={name}
          options={[
            { value: true, label: "Yes" },
            { value: false, label: "No" },
          ]}
          value={value}
          choose={set}
          disabled={work.job.isSigned}
        />
      );
    default: {
      const { label } = field;
      const maxLength = field.kind === "text" ? field.maxLength : ONE_NAME;
      return <TextEntry {...{ work, name, value }} field={{ label, maxLength }} />;
    }
  }
}

type TextProps = Pick<EntryProps, "work" | "name" | "value"> & {
  readonly field: Pick<TextFieldDef, "label" | "maxLength">;
};

/** Kept as it is typed; what is too long waits with the reason until it is shortened. */
function TextEntry({ work, name, field, value }: TextProps) {
  const text = typeof value === "string" ? value : "";
  const count = charactersIn(text);
  const type = (given: string) => {
    const next = keepableText(given);
    const { id } = work.job;
    if (charactersIn(next) > field.maxLength) void phone().hold(id, name, next, longerThan(field));
    else void phone().enter(id, name, next === "" ? null : next);
  };
  const own = {
    id: `entry-${name}`,
    className: "control",
    disabled: work.job.isSigned,
    maxLength: MOST_TEXT,
    value: text,
    onChange: ({ target }: ChangeEvent<HTMLInputElement | HTMLTextAreaElement>) => type(target.value),
  };
  return (
    <>
      {field.maxLength <= ONE_LINE ? <input {...own} /> : <textarea rows={3} {...own} />}
      {count > NEARLY * field.maxLength ? (
        <p className="text-right text-sm text-muted">
          {count} of {field.maxLength} characters
        </p>
      ) : null}
    </>
  );
}

/** The other stage's reading, one tap away, where it may well be the same. */
function CopyOther({ work, name }: { readonly work: Work; readonly name: StartupKey }) {
  const other = otherStageKey(name);
  const theirs = other === null ? null : (work.values[other] ?? null);
  if (theirs === null || (work.values[name] ?? null) !== null) return null;
  const stage = name.startsWith("first") ? "full capacity" : "first stage";
  return (
    <Button wide onClick={() => void phone().enter(work.job.id, name, theirs)}>
      Same as at {stage}: {words(startupField(name), theirs)}
    </Button>
  );
}

export function words(field: FieldDef, value: PlainValue): string {
  if (value === null) return "nothing";
  if (field.kind === "yes-no") return value === true ? "yes" : "no";
  if (field.kind === "choice")
    return field.options.find((one) => one.value === value)?.label ?? String(value);
  return field.kind === "number" ? `${value} ${field.unit}`.trim() : String(value);
}
