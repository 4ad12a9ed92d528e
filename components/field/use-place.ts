import { useEffect, useState } from "react";

/** Where the person is: all jobs, one job, or one screen of it. It stands in the address, so "back" works. */
export type Place = { readonly job: string | null; readonly at: string | null };

const START: Place = { job: null, at: null };

export function placeHref({ job, at }: Place): string {
  if (job === null) return "/today";
  return `/today?job=${job}${at === null ? "" : `&at=${encodeURIComponent(at)}`}`;
}

/** The place, and the way to another one. No request is made: all screens are in the page. */
export function usePlace(): readonly [Place, (next: Place) => void] {
  const [place, setPlace] = useState<Place>(START);
  useEffect(() => {
    const read = () => {
      const query = new URLSearchParams(window.location.search);
      setPlace({ job: query.get("job"), at: query.get("at") });
    };
    read();
    window.addEventListener("popstate", read);
    return () => window.removeEventListener("popstate", read);
  }, []);
  const go = (next: Place) => {
    window.history.pushState(null, "", placeHref(next));
    setPlace(next);
    window.scrollTo(0, 0);
  };
  return [place, go];
}
