"use client";

import { useRouter } from "next/navigation";
import { useEffect } from "react";

/** Where a call is taken down; the empty search says that somebody is on the phone. */
const INTAKE = "/callbacks?find=";

/** Alt+C from any page, also out of a field: the phone rings while something is being typed. */
export function PhoneKey() {
  const router = useRouter();
  useEffect(() => {
    function onKey(event: KeyboardEvent): void {
      // By its place: with Alt some keyboards write another letter.
      if (event.code !== "KeyC" || !event.altKey || event.ctrlKey || event.metaKey || event.shiftKey) return;
      event.preventDefault();
      router.push(INTAKE);
    }
    document.addEventListener("keydown", onKey);
    return () => document.removeEventListener("keydown", onKey);
  }, [router]);
  return null;
}
