import { useState } from "react";
import { Card } from "@/components/ui/card";
import { Button } from "@/components/ui/plain-button";
import { EntryField } from "./entry-field";
import { JobFrame } from "./job-frame";
import { OriginalsAsked } from "./originals-asked";
import { PhotoCard } from "./photo-card";
import { TakePhoto } from "./take-photo";
import type { Work } from "./use-job";
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
  const own = state.photos.filter((one) => one.jobId === job.id);
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
          <TakePhoto jobId={job.id} field={null} caption={subject} label="Take a photo" look="primary" />
        </div>
        <OriginalsAsked state={state} jobId={job.id} />
        <p className="text-sm text-muted">
          The office gets a smaller copy. The full size stays on this phone in case the office asks for it,
          until 30 days after the startup is signed. When the phone is full, full sizes go first.
        </p>
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
