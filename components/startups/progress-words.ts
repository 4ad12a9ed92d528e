import type { StartupProgress } from "@/lib/domain/startup-progress";

/** What the phones still hold, in words; `null` when nothing. */
export function stillOnPhone({ waitingFields, waitingPhotos }: StartupProgress): string | null {
  const parts = [
    waitingFields > 0 ? counted(waitingFields, "reading") : null,
    waitingPhotos > 0 ? counted(waitingPhotos, "photo") : null,
  ].filter((one) => one !== null);
  return parts.length === 0 ? null : `${parts.join(" and ")} still on the phone`;
}

export function counted(count: number, one: string): string {
  return `${count} ${one}${count === 1 ? "" : "s"}`;
}

/** When a phone was last in contact, in the company's time zone. */
export function contactText(at: string | null, timeZone: string): string {
  if (at === null) return "No contact yet";
  const day: Intl.DateTimeFormatOptions = { day: "numeric", month: "short" };
  const time: Intl.DateTimeFormatOptions = { hour: "numeric", minute: "2-digit", second: "2-digit" };
  return new Intl.DateTimeFormat("en-US", { ...day, ...time, timeZone }).format(new Date(at));
}

export const STATE_WORDS: Readonly<Record<StartupProgress["state"], string>> = {
  "not begun": "Not begun",
  draft: "Under way",
  signed: "Signed",
};
