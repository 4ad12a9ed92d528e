"use client";

import { useEffect, useState } from "react";
import type { StartupProgress } from "@/lib/domain/startup-progress";

const EVERY_MS = 5_000;

type Live = { readonly startups: readonly StartupProgress[]; readonly isStale: boolean };

/**
 * What is watched, as it is now. Asked every five seconds with the tag of the last answer: an unchanged state
 * costs one small query and no body. A stream would hold a connection for each open page, needs its own
 * way through proxies and restarts, and would be seconds faster, which a person at a desk does not notice.
 * A page in the background does not ask.
 */
export function useLiveProgress(path: string, first: readonly StartupProgress[]): Live {
  const [live, setLive] = useState<Live>({ startups: first, isStale: false });
  useEffect(() => {
    let tag: string | null = null;
    let timer: ReturnType<typeof setTimeout> | undefined;
    let ended = false;
    const ask = async () => {
      if (document.visibilityState === "visible") {
        try {
          const answer = await fetch(path, {
            cache: "no-store",
            headers: tag === null ? {} : { "if-none-match": tag },
          });
          if (answer.ok) {
            const { startups } = (await answer.json()) as { startups: readonly StartupProgress[] };
            tag = answer.headers.get("etag");
            if (!ended) setLive({ startups, isStale: false });
          } else if (!ended) setLive((last) => ({ ...last, isStale: answer.status !== 304 }));
        } catch {
          if (!ended) setLive((last) => ({ ...last, isStale: true }));
        }
      }
      if (!ended) timer = setTimeout(ask, EVERY_MS);
    };
    const wake = () => {
      clearTimeout(timer);
      void ask();
    };
    document.addEventListener("visibilitychange", wake);
    timer = setTimeout(ask, EVERY_MS);
    return () => {
      ended = true;
      clearTimeout(timer);
      document.removeEventListener("visibilitychange", wake);
    };
  }, [path]);
  return live;
}
