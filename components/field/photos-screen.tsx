import { useState } from "react";
import { Card } from "@/components/ui/card";
import { Notice } from "@/components/ui/notice";
import { Button } from "@/components/ui/plain-button";
import { shrinkPhoto, whereNow } from "@/lib/offline/shrink-photo";
import { EntryField } from "./entry-field";
import { JobFrame } from "./job-frame";
import { PhotoCard } from "./photo-card";
import type { Work } from "./use-job";
import { phone } from "./use-phone";
import type { Place } from "./use-place";

type Props = { readonly work: Work; readonly go: (place: Place) => void };

const SUBJECTS = [
  "Nameplate, outdoor unit",
  "Nameplate, indoor unit",
  "Drain and trap",
  "Filter",
  "Gauges",
  "Thermostat settings",
  "Something else",
] as const;

/** Pictures of the job, shrunk on the phone, and notes. */
export function PhotosScreen({ work, go }: Props) {
  const { job, state } = work;
  const [subject, setSubject] = useState<string>(SUBJECTS[0]);
  const [keepOriginal, setKeepOriginal] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const own = state.photos.filter((one) => one.jobId === job.id);
  const take = async (file: File) => {
    const takenAt = new Date().toISOString();
    setProblem(null);
    try {
      const [small, where] = await Promise.all([shrinkPhoto(file), whereNow()]);
      await phone().keepPhoto({
        ...small,
        jobId: job.id,
        field: null,
        caption: subject,
        takenAt,
        latitude: where?.latitude ?? null,
        longitude: where?.longitude ?? null,
        original: keepOriginal ? file : null,
      });
      await phone().send();
    } catch (error) {
      setProblem(error instanceof Error ? error.message : "The picture could not be kept. Take it again.");
    }
  };
  return (
    <JobFrame
      work={work}
      go={go}
      title="Photos and notes"
      bottomBar={
        <Button variant="primary" wide onClick={() => go({ job: job.id, at: "finish" })}>
          Next: before leaving
        </Button>
      }
    >
      <div className="grid gap-4">
        {problem === null ? null : <Notice kind="problem" title={problem} />}
        <div className="grid gap-2">
          <label htmlFor="photo-subject" className="font-semibold">
            What it shows
          </label>
          <select
            id="photo-subject"
            className="control"
            value={subject}
            onChange={(event) => setSubject(event.target.value)}
          >
            {SUBJECTS.map((one) => (
              <option key={one}>{one}</option>
            ))}
          </select>
          <label className="choice flex min-h-11 items-center gap-2">
            <input
              type="checkbox"
              className="size-6 accent-accent"
              checked={keepOriginal}
              onChange={(event) => setKeepOriginal(event.target.checked)}
            />
            Keep the full picture on this phone as well
          </label>
          <label className="button button-primary focus-within:outline-3 focus-within:outline-offset-2 focus-within:outline-accent">
            Take a photo
            <input
              type="file"
              accept="image/*"
              capture="environment"
              className="sr-only"
              onChange={(event) => {
                const file = event.currentTarget.files?.[0];
                event.currentTarget.value = "";
                if (file) void take(file);
              }}
            />
          </label>
        </div>
        <ul className="grid gap-3">
          {own.map((photo) => (
            <li key={photo.id}>
              <PhotoCard photo={photo} />
            </li>
          ))}
        </ul>
        <OfficePhotos work={work} />
        <Card>
          <EntryField work={work} name="notes" isFirst={false} />
        </Card>
      </div>
    </JobFrame>
  );
}

/** What the office holds from other devices. */
function OfficePhotos({ work }: { readonly work: Work }) {
  const own = new Set(work.state.photos.map((one) => one.id));
  const others = work.job.photos.filter((one) => !own.has(one.id));
  if (others.length === 0) return null;
  return (
    <p className="text-sm text-muted">
      With the office from other devices: {others.map((one) => one.caption || one.fileName).join(", ")}.
    </p>
  );
}
