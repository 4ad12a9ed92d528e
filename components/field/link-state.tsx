import { useEffect } from "react";
import { MEET_EVERY_MS, SPREAD_MS, STILL_MS } from "@/lib/offline/contact";
import { jobsThatNeedYou } from "@/lib/offline/needs-you";
import { type PhoneState, unsentCount } from "@/lib/offline/phone-state";
import { SendMark } from "./send-mark";
import { phone } from "./use-phone";

/** Keeps trying: at the start, when the signal is back, when the page is looked at, and now and then. */
export function useContact(state: PhoneState): void {
  const isReady = state.phase !== "starting";
  useEffect(() => {
    if (!isReady) return;
    const meet = () => phone().meet();
    const whenSeen = () => {
      if (document.visibilityState === "visible") void meet();
      else void phone().send();
    };
    void meet();
    const timer = setInterval(() => document.visibilityState === "visible" && void meet(), MEET_EVERY_MS);
    let soon: ReturnType<typeof setTimeout> | undefined;
    const whenBack = () => {
      clearTimeout(soon);
      soon = setTimeout(() => void meet(), SPREAD_MS * Math.random());
    };
    window.addEventListener("online", whenBack);
    document.addEventListener("visibilitychange", whenSeen);
    return () => {
      clearInterval(timer);
      clearTimeout(soon);
      window.removeEventListener("online", whenBack);
      document.removeEventListener("visibilitychange", whenSeen);
    };
  }, [isReady]);
  // Only something new is a reason to send at once; what could not be sent goes with the next contact.
  const ready = readyToSend(state);
  useEffect(() => {
    if (ready === "") return;
    const timer = setTimeout(() => void phone().send(), STILL_MS);
    return () => clearTimeout(timer);
  }, [ready]);
}

/** What could go out now, as one text that changes when it does. */
function readyToSend({ drafts, photos, letters }: PhoneState): string {
  const fields = Object.entries(drafts).flatMap(([jobId, draft]) =>
    Object.entries(draft.pending)
      .filter(([, field]) => field.held === null)
      .map(([key, { value }]) => `${jobId} ${key} ${value}`),
  );
  const others = [...photos, ...letters].filter((one) => one.state.at === "phone").map((one) => one.id);
  return [...fields, ...others].join("\n");
}

/** One line at the top: is everything with the office? */
export function LinkState({ state }: { readonly state: PhoneState }) {
  const count = unsentCount(state);
  const held = jobsThatNeedYou(state).length > 0;
  const onItsWay = state.sending ? "sending" : state.keeping ? "keeping" : "phone";
  const at = count === 0 ? "sent" : held ? "needs you" : onItsWay;
  return (
    <div role="status" className="flex flex-col items-end">
      {count === 0 ? <SendMark at="sent" /> : <SendMark at={at} count={count} />}
      {state.link === "offline" ? <span className="text-xs text-muted">no signal</span> : null}
    </div>
  );
}
