import { useState } from "react";
import { cx } from "@/components/ui/cx";
import { readReading } from "@/lib/domain/field-range";
import type { NumberFieldDef } from "@/lib/domain/fields";
import type { PlainValue } from "@/lib/domain/merge-fields";
import type { StartupKey } from "@/lib/domain/startup-walk";
import { NumberPad } from "./number-pad";
import { useHabits } from "./use-habits";
import type { Work } from "./use-job";
import { phone } from "./use-phone";

type Props = {
  readonly work: Work;
  readonly name: StartupKey;
  readonly field: NumberFieldDef;
  readonly value: PlainValue;
  readonly isFirst: boolean;
};

/**
 * A number with keys of our own. Each stroke is kept on the phone: as a number when it is one, as text that
 * waits when it is not one yet. The phone's own keyboard comes on request, for dictation.
 */
export function NumberEntry({ work, name, field, value, isFirst }: Props) {
  const [habits] = useHabits();
  const [own, setOwn] = useState<{ readonly text: string; readonly value: PlainValue } | null>(null);
  const [isOpen, setIsOpen] = useState(isFirst);
  const [speaks, setSpeaks] = useState(false);
  // What another page or the office changed replaces the text; what was typed here stays as it was typed.
  const text = own !== null && own.value === value ? own.text : value === null ? "" : String(value);
  const held = work.draft.pending[name]?.held ?? null;
  const type = (next: string) => {
    const read = readReading(field, next);
    if (read.ok) {
      setOwn({ text: next, value: read.value });
      void phone().enter(work.job.id, name, read.value);
      return;
    }
    setOwn({ text: next, value: next });
    void phone().hold(work.job.id, name, next, read.problem);
  };
  const shown = own === null ? null : readReading(field, text);
  const converted = shown?.ok ? shown.converted : undefined;
  const problemId = `problem-${name}`;
  return (
    <div className="grid gap-2">
      <div className="flex items-stretch">
        <input
          id={`entry-${name}`}
          type="text"
          inputMode={speaks ? "text" : "none"}
          autoComplete="off"
          enterKeyHint="next"
          className="control min-w-0 rounded-r-none! text-right text-2xl! font-semibold"
          value={text}
          disabled={work.job.isSigned}
          aria-invalid={held?.why === "problem" ? true : undefined}
          aria-describedby={cx(`unit-${name}`, held?.why === "problem" && problemId)}
          onFocus={() => setIsOpen(true)}
          onChange={(event) => type(event.target.value)}
        />
        <span
          id={`unit-${name}`}
          className="flex min-w-16 shrink-0 items-center justify-center border border-l-0 border-rule-strong bg-sunk px-3 whitespace-nowrap text-muted"
        >
          {field.unit === "" ? "number" : field.unit}
        </span>
      </div>
      {converted === undefined ? null : (
        <p role="status" className="text-sm font-semibold text-accent">
          {converted}
        </p>
      )}
      {held?.why === "problem" ? (
        <p id={problemId} role="alert" className="text-sm font-semibold text-short">
          {held.message}
        </p>
      ) : null}
      {isOpen && !work.job.isSigned ? (
        <NumberPad
          field={field}
          text={text}
          type={type}
          hand={habits.hand}
          speaks={speaks}
          speak={setSpeaks}
        />
      ) : null}
    </div>
  );
}
