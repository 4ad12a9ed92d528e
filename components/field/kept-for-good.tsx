import { useEffect, useState } from "react";

/** Says when the browser has not promised to keep what this page stores. */
export function KeptForGood() {
  const [isKept, setIsKept] = useState(true);
  useEffect(() => {
    void navigator.storage?.persisted?.().then(setIsKept, () => undefined);
  }, []);
  if (isKept) return null;
  return (
    <p className="text-sm text-muted">
      When this phone is full its browser may clear what this page keeps. Add the page to the home screen, and
      it is kept.
    </p>
  );
}
