import { useEffect, useState } from "react";
import { Button } from "@/components/ui/plain-button";
import type { Photo } from "@/lib/offline/outbox";
import { HEIC } from "@/lib/offline/shrink-photo";
import { LinkPlain } from "./link-plain";
import { SendMark } from "./send-mark";
import { phone, usePhone } from "./use-phone";

/** One picture, when and where, and whether the office has it. */
export function PhotoCard({ photo }: { readonly photo: Photo }) {
  const { sending, originals } = usePhone();
  const address = useAddressOf(photo.bytes);
  const original = useAddressOf(originals.find((one) => one.id === photo.id)?.file ?? null);
  const { state } = photo;
  const at =
    state.at === "office" ? "sent" : state.at === "refused" ? "needs you" : sending ? "sending" : "phone";
  return (
    <figure className="grid grid-cols-[6rem_1fr] gap-3 border border-rule bg-sheet p-2">
      {address === null || photo.type === HEIC ? (
        <span className="text-sm text-muted">{photo.type === HEIC ? "HEIC picture" : null}</span>
      ) : (
        // biome-ignore lint/performance/noImgElement: a picture in this phone's own memory
        <img src={address} alt={photo.caption} className="aspect-square w-24 object-cover" />
      )}
      <figcaption className="grid content-start gap-1 text-sm">
        <strong>{photo.caption}</strong>
        <span className="text-muted">
          {new Date(photo.takenAt).toLocaleString()}
          {photo.latitude === null || photo.longitude === null
            ? ", place unknown"
            : `, ${photo.latitude.toFixed(4)}° ${photo.longitude.toFixed(4)}°`}
        </span>
        {photo.type === HEIC ? (
          <span>This phone cannot show its own picture here. It is kept and sent as the camera made it.</span>
        ) : null}
        <SendMark at={at} />
        {state.at === "refused" ? (
          <>
            <span className="text-short">{state.message}</span>
            <Button onClick={() => void phone().sendAgain({ photo: photo.id })}>Send it again</Button>
          </>
        ) : null}
        {original === null ? null : <LinkPlain href={original}>Full picture</LinkPlain>}
        {state.at === "office" ? null : (
          <Button variant="danger" onClick={() => void phone().dropPhoto(photo.id)}>
            Throw away
          </Button>
        )}
      </figcaption>
    </figure>
  );
}

/** An address for a file of this phone, given back when it is no longer shown. */
function useAddressOf(file: Blob | null): string | null {
  const [address, setAddress] = useState<string | null>(null);
  useEffect(() => {
    if (file === null) return setAddress(null);
    const made = URL.createObjectURL(file);
    setAddress(made);
    return () => URL.revokeObjectURL(made);
  }, [file]);
  return address;
}
