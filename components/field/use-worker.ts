import { useEffect, useState } from "react";
import { phone } from "./use-phone";

/**
 * Installs the service worker that keeps this page for places without a signal. It fetches all that the page may ever need,
 * so it comes behind the jobs: before them it would take their bandwidth.
 */
export function useWorker(isReady: boolean): void {
  useEffect(() => {
    if (!isReady || !("serviceWorker" in navigator)) return;
    navigator.serviceWorker.register("/sw/sw.js", { scope: "/today", type: "module" }).catch(() => undefined);
    // Ask once that the browser never clears readings to make room. A refusal changes nothing.
    navigator.storage?.persist?.().catch(() => undefined);
  }, [isReady]);
  useEffect(followOtherPages, []);
}

/**
 * Another page of this phone has loaded a newer version, and the scripts of this one are kept no longer: it loads itself again as
 * soon as nobody looks at it.
 */
function followOtherPages(): (() => void) | undefined {
  const worker = navigator.serviceWorker;
  if (!worker?.controller) return;
  const follow = () => {
    if (document.hidden)
      void phone()
        .settle()
        .finally(() => window.location.reload());
  };
  const changed = () => {
    follow();
    document.addEventListener("visibilitychange", follow);
  };
  worker.addEventListener("controllerchange", changed, { once: true });
  return () => {
    worker.removeEventListener("controllerchange", changed);
    document.removeEventListener("visibilitychange", follow);
  };
}

/** A newer version that waits, as a function that loads it; `null` while there is none. */
export function useNewVersion(): (() => void) | null {
  const [waiting, setWaiting] = useState<ServiceWorker | null>(null);
  useEffect(() => {
    if (!("serviceWorker" in navigator)) return;
    let live = true;
    void navigator.serviceWorker.getRegistration("/today").then((registration) => {
      if (!registration || !live) return;
      const look = () => setWaiting(navigator.serviceWorker.controller ? registration.waiting : null);
      look();
      registration.addEventListener("updatefound", () => {
        registration.installing?.addEventListener("statechange", look);
      });
    });
    return () => {
      live = false;
    };
  }, []);
  if (waiting === null) return null;
  return () => {
    navigator.serviceWorker.addEventListener("controllerchange", () => window.location.reload(), {
      once: true,
    });
    waiting.postMessage({ type: "SKIP_WAITING" });
  };
}
