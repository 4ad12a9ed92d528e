import { useEffect, useRef, useState } from "react";
import { heard, onBack } from "@/components/forms/still-there";
import type { SaveStateProps } from "@/components/ui/save-state";
import type { FieldDefs } from "@/lib/domain/fields";
import type { FieldProblem } from "@/lib/domain/problems";
import { savable, touchedFields } from "@/lib/domain/savable";
import type { StageKey } from "@/lib/domain/stages";
import { LOST, PAUSE_MS, RETRY_MS, stateAfterSave } from "./after-save";
import { heldEntries } from "./held-entries";
import type { SaveAnswer } from "./save-answer";
import { formOf, type Settled, savingForms } from "./saving-forms";
import type { TypedValues } from "./typed-values";
import { useLeaving } from "./use-leaving";

type Facts = {
  readonly jobId: string;
  readonly stage: StageKey;
  readonly fields: FieldDefs;
  readonly inputs: TypedValues;
  readonly version: number | null;
  readonly mayEdit: boolean;
  readonly save: (input: unknown) => Promise<SaveAnswer>;
  /** What stands in the form now. */
  readonly read: () => TypedValues;
  /** Writes what somebody else saved into fields that were not touched here. */
  readonly write: (values: TypedValues) => void;
};

/**
 * Saves a stage form in pauses of typing: only what can be kept; the rest stays in the form with its problem.
 * Somebody else's save is taken in field by field; only a field that both changed stops saving and asks.
 */
export function useAutosave(facts: Facts) {
  const [state, setState] = useState<SaveStateProps>({ state: "unchanged" });
  const [problems, setProblems] = useState<readonly FieldProblem[]>([]);
  const [theirs, setTheirs] = useState<TypedValues | null>(null);
  const saved = useRef(facts.inputs);
  const version = useRef(facts.version);
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  const at = useRef({ busy: false, again: false, dirty: false, asking: false, refused: false });
  const formKey = formOf(facts.jobId, facts.stage);
  const work = useRef(Promise.resolve());
  const latest = useRef(facts);
  latest.current = facts;

  const sendNow = async (): Promise<void> => {
    clearTimeout(timer.current);
    if (at.current.busy) {
      at.current.again = true;
      return;
    }
    if (at.current.asking) return;
    const { jobId, stage, fields, save, read, write } = latest.current;
    const typed = read();
    at.current = { ...at.current, busy: true, again: false, dirty: false };
    const kept = savable(stage, fields, saved.current, typed);
    setState({ state: "saving" });
    const answer = heard(
      await save({ jobId, stage, expectedVersion: version.current, inputs: kept.inputs }).catch(
        (): SaveAnswer => LOST,
      ),
    );
    at.current.busy = false;
    at.current.refused = answer.ok && kept.problems.length > 0;
    const unsaved = answer.ok
      ? kept.problems.map(({ field }) => field)
      : touchedFields(fields, saved.current, typed);
    heldEntries.hold(formKey, typed, unsaved);
    if (answer.ok) {
      version.current = answer.value.version;
      saved.current = kept.inputs as TypedValues;
      setTheirs(null);
      setProblems(kept.problems);
      setState(stateAfterSave(kept.problems));
    } else if (answer.code === "CONFLICT" && answer.details.theirs) {
      const others = answer.details.theirs as TypedValues;
      const merged = savable(stage, fields, saved.current, typed, others);
      version.current = typeof answer.details.version === "number" ? answer.details.version : version.current;
      // Fields that only they changed are theirs in this form as well, so that saving it takes nothing back.
      const touched = touchedFields(fields, saved.current, typed);
      const untouched = Object.keys(fields).filter((key) => !touched.includes(key));
      write(Object.fromEntries(untouched.map((key) => [key, others[key] ?? null])));
      saved.current = others;
      if (merged.conflicts.length === 0) return sendNow();
      at.current.asking = true;
      setTheirs(others);
      setState({ state: "not saved", why: answer.message });
    } else {
      at.current.dirty = true;
      setProblems(answer.fields);
      setState({ state: "not saved", why: answer.message });
      if (answer.code === "UNAVAILABLE") timer.current = setTimeout(() => void send(), RETRY_MS);
    }
    if (at.current.again && !at.current.asking) return sendNow();
  };
  const send = (): Promise<void> => {
    const isFirst = !at.current.busy;
    const done = sendNow();
    if (isFirst) work.current = done;
    return done;
  };
  /** Sends what waits, and answers when nothing is on its way any more. */
  const settle = async (): Promise<Settled> => {
    await work.current;
    if (at.current.dirty && !at.current.asking) await send();
    const { busy, dirty, asking, refused } = at.current;
    return { isSaved: !(busy || dirty || asking || refused), version: version.current };
  };

  const touch = () => {
    at.current.dirty = true;
    if (at.current.asking) return;
    setState({ state: "typing" });
    clearTimeout(timer.current);
    timer.current = setTimeout(() => void send(), PAUSE_MS);
  };

  useLeaving({
    isUnsaved: () => at.current.dirty || at.current.busy || at.current.refused,
    flush: () => {
      if (at.current.dirty && !at.current.asking) void send();
    },
  });

  const doors = useRef({ send, settle });
  doors.current = { send, settle };
  useEffect(() => {
    const held = heldEntries.of(formKey);
    // Told to the form as if typed anew, so that it is saved or says again why it cannot be.
    if (held !== null && latest.current.mayEdit) latest.current.write(held);
    const stop = onBack(() => {
      if (at.current.dirty) void doors.current.send();
    });
    const leave = savingForms.register(formKey, () => doors.current.settle());
    return () => {
      stop();
      leave();
    };
  }, [formKey]);

  /** After the person decided: what stands in the form is saved over theirs. */
  const keepMine = () => {
    at.current.asking = false;
    void send();
  };
  return { state, problems, theirs, touch, send, keepMine };
}
