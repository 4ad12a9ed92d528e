import { useEffect, useRef, useState } from "react";
import { heard, onBack } from "@/components/forms/still-there";
import type { SaveStateProps } from "@/components/ui/save-state";
import { keptFields } from "@/lib/domain/kept-fields";
import { type Option, optionFields } from "@/lib/domain/options";
import type { FieldProblem } from "@/lib/domain/problems";
import { LOST, PAUSE_MS, RETRY_MS, stateAfterSave } from "../stage/after-save";
import type { TypedValues } from "../stage/typed-values";
import { useLeaving } from "../stage/use-leaving";
import type { Answer } from "./option-data";

export type OptionEntry = { readonly label: string; readonly inputs: TypedValues };
type Save = (entry: OptionEntry, expectedVersion: number) => Promise<Answer>;

/** Saves an option in pauses of typing: what cannot be kept stays in the form with its problem and its last value. */
export function useOptionAutosave(option: Option, save: Save) {
  const [state, setState] = useState<SaveStateProps>({ state: "unchanged" });
  const [problems, setProblems] = useState<readonly FieldProblem[]>([]);
  const kept = useRef<OptionEntry>({ label: option.label, inputs: option.inputs as TypedValues });
  const version = useRef(option.version);
  const timer = useRef<ReturnType<typeof setTimeout>>(undefined);
  const at = useRef({ dirty: false, work: Promise.resolve(true) });
  const now = useRef(kept.current);
  const latest = useRef(save);
  latest.current = save;

  const once = async (): Promise<boolean> => {
    if (!at.current.dirty) return true;
    at.current.dirty = false;
    setState({ state: "saving" });
    const typed = now.current;
    const { values, problems: found } = keptFields(optionFields, kept.current.inputs, typed.inputs);
    const entry = { label: typed.label, inputs: values as TypedValues };
    const answer = heard(await latest.current(entry, version.current).catch((): Answer => LOST));
    if (!answer.ok) {
      at.current.dirty = true;
      setProblems(answer.fields);
      setState({ state: "not saved", why: answer.message });
      if (answer === LOST) timer.current = setTimeout(() => void send(), RETRY_MS);
      return false;
    }
    version.current += 1;
    kept.current = entry;
    setProblems(found);
    setState(stateAfterSave(found));
    return found.length === 0;
  };
  /** One after the other, so that each save starts from the version of the one before. */
  const send = (): Promise<boolean> => {
    clearTimeout(timer.current);
    at.current.work = at.current.work.then(once);
    return at.current.work;
  };
  const touch = (entry: OptionEntry) => {
    now.current = entry;
    at.current.dirty = true;
    setState({ state: "typing" });
    clearTimeout(timer.current);
    timer.current = setTimeout(() => void send(), PAUSE_MS);
  };
  /** As it was when the editor was opened. */
  const putBack = async (): Promise<boolean> => {
    clearTimeout(timer.current);
    await at.current.work;
    at.current.dirty = false;
    if (version.current === option.version) return true;
    now.current = { label: option.label, inputs: option.inputs as TypedValues };
    at.current.dirty = true;
    return send();
  };
  const latestSend = useRef(send);
  latestSend.current = send;
  useEffect(
    () =>
      onBack(() => {
        if (at.current.dirty) void latestSend.current();
      }),
    [],
  );
  useLeaving({ isUnsaved: () => at.current.dirty, flush: () => void send() });
  return { state, problems, touch, send, putBack };
}
