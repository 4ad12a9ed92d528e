import { useEffect, useRef } from "react";

type Entry = {
  /** True while something typed is not kept. */
  readonly isUnsaved: () => boolean;
  /** Saves what is not; called when nothing is unsaved, it does nothing. */
  readonly flush: () => void;
};

/** Saves what was typed when its page is hidden, left or taken down, and has the browser ask before it goes. */
export function useLeaving(entry: Entry): void {
  const latest = useRef(entry);
  latest.current = entry;
  useEffect(() => {
    const flush = () => latest.current.flush();
    const warn = (event: BeforeUnloadEvent) => {
      if (!latest.current.isUnsaved()) return;
      flush();
      event.preventDefault();
    };
    const hide = () => document.visibilityState === "hidden" && flush();
    window.addEventListener("beforeunload", warn);
    document.addEventListener("visibilitychange", hide);
    return () => {
      window.removeEventListener("beforeunload", warn);
      document.removeEventListener("visibilitychange", hide);
      flush();
    };
  }, []);
}
