import { Camera } from "lucide-react";
import { useState } from "react";
import { pictureProblemOf } from "@/lib/offline/phone-state";
import { HEIC, shrinkPhoto, whereNow } from "@/lib/offline/shrink-photo";
import { phone } from "./use-phone";

type Props = {
  readonly jobId: string;
  /** The field the picture proves; `null` for the job as a whole. */
  readonly field: string | null;
  readonly caption: string;
  readonly label: string;
  readonly look: "primary" | "secondary";
};

/** The phone's camera: the picture is made small and kept at once, with the camera's own beside it; sending comes later. */
export function TakePhoto({ jobId, field, caption, label, look }: Props) {
  const [problem, setProblem] = useState<string | null>(null);
  const take = async (file: File) => {
    const takenAt = new Date().toISOString();
    setProblem(null);
    try {
      const [small, where] = await Promise.all([shrinkPhoto(file), whereNow()]);
      const place = { latitude: where?.latitude ?? null, longitude: where?.longitude ?? null };
      // A HEIC picture that stayed as it was is its own original.
      const camera = small.type === HEIC ? null : file;
      await phone().keepPhoto({ ...small, ...place, jobId, field, caption, takenAt }, camera);
      await phone().send();
    } catch (error) {
      setProblem(pictureProblemOf(error));
    }
  };
  return (
    <div className="grid gap-2">
      {problem === null ? null : (
        <p role="alert" className="font-semibold text-short">
          {problem}
        </p>
      )}
      <label
        className={`button button-${look} focus-within:outline-3 focus-within:outline-offset-2 focus-within:outline-accent`}
      >
        <Camera aria-hidden="true" className="size-5" />
        {label}
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
  );
}
