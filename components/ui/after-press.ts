let isPressed = false;

if (typeof window !== "undefined") {
  const press = (begins: boolean) => () => {
    isPressed = begins;
  };
  window.addEventListener("pointerdown", press(true), true);
  for (const end of ["pointerup", "pointercancel"] as const) window.addEventListener(end, press(false), true);
}

/**
 * Runs what moves the page once a press that is going on has ended. A field that is left by pressing a button would
 * otherwise push the button from under the pointer with its message, and the press would do nothing.
 */
export function afterPress(run: () => void): void {
  if (!isPressed) {
    run();
    return;
  }
  const ends = new AbortController();
  for (const end of ["pointerup", "pointercancel"] as const) {
    window.addEventListener(
      end,
      () => {
        ends.abort();
        // After the click that follows from it.
        setTimeout(run);
      },
      { signal: ends.signal },
    );
  }
}
