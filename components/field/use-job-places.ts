import { useEffect, useState } from "react";
import type { JobPlaces } from "./job-places";
import { phone } from "./use-phone";

const LOOK_AGAIN_MS = 5_000;

/**
 * The screens of a job, which come behind the list of jobs, before anybody taps one; `null` until they are there. When the signal goes
 * meanwhile, the page loads itself again as soon as it can: a script that failed to come is not asked for twice.
 */
export function useJobPlaces(isReady: boolean): typeof JobPlaces | null {
  const [places, setPlaces] = useState<typeof JobPlaces | null>(null);
  const [hasFailed, setHasFailed] = useState(false);
  useEffect(() => {
    if (!isReady) return;
    import("./job-places").then(
      (loaded) => setPlaces(() => loaded.JobPlaces),
      () => setHasFailed(true),
    );
  }, [isReady]);
  useEffect(() => {
    if (!hasFailed) return;
    const timer = setInterval(() => void loadAgain().catch(() => undefined), LOOK_AGAIN_MS);
    return () => clearInterval(timer);
  }, [hasFailed]);
  return places;
}

/** Only when the page is to be had: without a signal and a service worker nothing would come in its place. */
async function loadAgain(): Promise<void> {
  const answer = await fetch("/today", { method: "HEAD", cache: "no-store" });
  if (!answer.ok) return;
  await phone().settle();
  window.location.reload();
}
