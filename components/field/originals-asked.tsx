import { Card } from "@/components/ui/card";
import type { Original } from "@/lib/offline/outbox";
import type { PhoneState } from "@/lib/offline/phone-state";
import { SendMark } from "./send-mark";

/** The originals that the office asked for, of one job or of all, and what became of each. */
export function OriginalsAsked({
  state,
  jobId,
}: {
  readonly state: PhoneState;
  readonly jobId: string | null;
}) {
  const asked = new Map(
    (state.bundle?.wishes ?? []).map(({ photoId, ...one }) => [photoId, { ...one, id: photoId }]),
  );
  const gone = state.originals.filter((one) => one.state.at !== "phone");
  const lines = [...new Map([...asked, ...gone.map((one) => [one.id, one] as const)]).values()]
    .filter((one) => jobId === null || one.jobId === jobId)
    .flatMap(({ id, caption }) => {
      const original = state.originals.find((one) => one.id === id);
      // A picture of another phone of this person.
      const isHere = original !== undefined || state.photos.some((one) => one.id === id);
      return isHere ? [{ id, caption, original }] : [];
    });
  if (lines.length === 0) return null;
  return (
    <Card title="Originals for the office">
      <ul className="grid gap-2">
        {lines.map(({ id, caption, original }) => (
          <li key={id} className="flex flex-wrap justify-between gap-2 text-sm">
            <span>Original of “{caption || "Photo"}” asked for by the office</span>
            <Became original={original} sending={state.sending} />
          </li>
        ))}
      </ul>
    </Card>
  );
}

function Became({
  original,
  sending,
}: {
  readonly original: Original | undefined;
  readonly sending: boolean;
}) {
  const at = original?.state.at ?? "phone";
  if (at === "office") return <SendMark at="sent" />;
  if (original?.state.at === "refused")
    return <strong className="text-short">{original.state.message}</strong>;
  if (at === "told" && original?.file)
    return <span>larger than 20 MB: it stays on this phone, and the office knows</span>;
  if (at === "told" || !original?.file)
    return <span>no longer on this phone{at === "told" ? "; the office knows" : ""}</span>;
  return <SendMark at={sending ? "sending" : "phone"} />;
}
