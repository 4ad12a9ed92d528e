import { useEffect, useState } from "react";
import { Button } from "@/components/ui/plain-button";
import type { StartupKey } from "@/lib/domain/startup-walk";
import type { Work } from "./use-job";
import { phone } from "./use-phone";

const MS_PER_MIN = 60_000;

/** Minutes that this phone can count. */
export function isTimed(name: StartupKey): boolean {
  return /(?:StabilisedMin|CondensateMin|evacuationHoldMin)$/.test(name);
}

/** A clock that goes on while the page is closed: only its start is kept. */
export function ClockRow({ work, name }: { readonly work: Work; readonly name: StartupKey }) {
  const startedAt = work.draft.clocks[name] ?? null;
  const [now, setNow] = useState(() => Date.now());
  useEffect(() => {
    if (startedAt === null) return;
    const timer = setInterval(() => setNow(Date.now()), 1_000);
    return () => clearInterval(timer);
  }, [startedAt]);
  const { id } = work.job;
  if (startedAt === null) {
    return (
      <Button
        wide
        disabled={work.job.isSigned}
        onClick={() => {
          setNow(Date.now());
          void phone().setClock(id, name, Date.now());
        }}
      >
        Start the clock
      </Button>
    );
  }
  const elapsedMs = now - startedAt;
  // The phone's clock was put back meanwhile: what it shows is no duration.
  if (elapsedMs < -1_000) {
    return (
      <div className="grid gap-2">
        <p role="alert" className="text-sm font-semibold text-short">
          The phone’s clock was changed. Time it again, or type the minutes.
        </p>
        <Button wide onClick={() => void phone().setClock(id, name, null)}>
          Stop this clock
        </Button>
      </div>
    );
  }
  const minutes = Math.floor(elapsedMs / MS_PER_MIN);
  const seconds = Math.max(0, Math.floor(elapsedMs / 1_000) % 60);
  return (
    <div className="flex items-center gap-2">
      <p role="timer" className="min-w-20 text-xl font-semibold">
        {minutes}:{String(seconds).padStart(2, "0")}
      </p>
      <Button
        variant="primary"
        className="flex-1"
        onClick={() => {
          void phone().enter(id, name, minutes);
          void phone().setClock(id, name, null);
        }}
      >
        Take {minutes} min
      </Button>
      <Button onClick={() => void phone().setClock(id, name, null)}>Stop</Button>
    </div>
  );
}
