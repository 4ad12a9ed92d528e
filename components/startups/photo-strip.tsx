import type { Answer } from "@/components/forms/use-sent-form";
import { Card } from "@/components/ui/card";
import { STAGE_FIELDS } from "@/lib/domain/stages";
import { type AskablePhoto, AskOriginal } from "./ask-original";

type Props = {
  readonly jobId: string;
  readonly photos: readonly AskablePhoto[];
  readonly timeZone: string;
  readonly ask: (input: unknown) => Promise<Answer>;
  readonly withdraw: (input: unknown) => Promise<Answer>;
};

/** The photos of a job, each leading to its large picture. */
export function PhotoStrip({ jobId, photos, ...doors }: Props) {
  return (
    <Card title="Photos">
      {photos.length === 0 ? <p className="text-sm text-muted">No photo has arrived yet.</p> : null}
      <ul className="grid grid-cols-2 gap-3 sm:grid-cols-3">
        {photos.map((photo) => {
          const label = photo.fieldPath ? STAGE_FIELDS.startup_record[photo.fieldPath]?.label : undefined;
          const words = photo.caption || label || "Photo";
          return (
            <li key={photo.id} className="grid content-start gap-1">
              {photo.widthPx === null ? (
                // Kept as the camera made it; what a browser cannot be relied on to draw is not shown as a broken picture.
                <p className="grid aspect-4/3 place-items-center border border-rule bg-sunk p-2 text-center text-sm">
                  A HEIC picture, kept as the phone made it. Download it to see it.
                </p>
              ) : (
                <a href={`/api/jobs/${jobId}/photos/${photo.id}?size=full`}>
                  {/* biome-ignore lint/performance/noImgElement: private bytes, sized by the server */}
                  <img
                    src={`/api/jobs/${jobId}/photos/${photo.id}?size=small`}
                    alt={words}
                    loading="lazy"
                    className="aspect-4/3 w-full border border-rule bg-sunk object-contain"
                  />
                </a>
              )}
              <p className="text-sm">{words}</p>
              <p className="text-xs text-muted">
                {photo.addedByName}
                {" · "}
                <a className="underline" href={`/api/jobs/${jobId}/photos/${photo.id}?size=original`}>
                  as it was sent
                </a>
              </p>
              {photo.mime === "image/heic" ? null : <AskOriginal jobId={jobId} photo={photo} {...doors} />}
            </li>
          );
        })}
      </ul>
    </Card>
  );
}
