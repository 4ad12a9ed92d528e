import { Check, CircleDashed } from "lucide-react";
import { useRef } from "react";
import { Button } from "@/components/ui/plain-button";
import { screenState, startupField, type WalkScreen } from "@/lib/domain/startup-walk";
import type { Work } from "./use-job";
import type { Place } from "./use-place";

type Props = { readonly work: Work; readonly screen: WalkScreen; readonly go: (place: Place) => void };

/** Every screen of the job, to go to in any order. */
export function JumpList({ work, screen, go }: Props) {
  const dialog = useRef<HTMLDialogElement>(null);
  const { screens, values, job } = work;
  const done = screens.filter((one) => screenState(one, values) === "done").length;
  return (
    <>
      <button type="button" className="text-link min-h-11" onClick={() => dialog.current?.showModal()}>
        {done} of {screens.length} done, jump
      </button>
      <dialog
        ref={dialog}
        aria-label="All readings"
        className="field-screen m-auto max-h-[90dvh] w-full max-w-xl overflow-y-auto border border-rule-strong bg-sheet p-3 text-base text-ink backdrop:bg-black/50"
      >
        <ul className="grid gap-1">
          {screens.map((one, index) => {
            const state = screenState(one, values);
            return (
              <li key={one.id}>
                {one.section === screens[index - 1]?.section ? null : (
                  <p className="mt-3 mb-1 font-semibold">{one.section}</p>
                )}
                <button
                  type="button"
                  aria-current={one.id === screen.id ? "step" : undefined}
                  className="button button-secondary w-full justify-start! text-left! aria-[current]:border-accent"
                  onClick={() => {
                    dialog.current?.close();
                    go({ job: job.id, at: one.id });
                  }}
                >
                  {state === "done" ? (
                    <Check aria-hidden="true" className="size-5 shrink-0 text-meets" />
                  ) : (
                    <CircleDashed aria-hidden="true" className="size-5 shrink-0 text-muted" />
                  )}
                  <span className="sr-only">{state}: </span>
                  {screenTitle(one)}
                </button>
              </li>
            );
          })}
        </ul>
        <Button wide variant="primary" className="mt-3" onClick={() => dialog.current?.close()}>
          Close
        </Button>
      </dialog>
    </>
  );
}

/** The fields of a screen in words. */
export function screenTitle(screen: WalkScreen): string {
  const labels = screen.fields.map((key) => startupField(key).label);
  return labels.length > 2
    ? `${labels[0]} and ${labels.length - 1} more`
    : labels.join(screen.needs === "any" ? " or " : ", ");
}
