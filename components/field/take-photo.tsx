import { Camera } from "lucide-react";
import { useId, useState } from "react";
import { pictureProblemOf } from "@/lib/offline/phone-state";
import { shrinkPhoto, whereNow } from "@/lib/offline/shrink-photo";
import { phone } from "./use-phone";

type Props = {
  readonly jobId: string;
  /** The field the picture proves; `null` for the job as a whole. */
  readonly field: string | null;
  readonly caption: string;
  readonly label: string;
  readonly look: "primary" | "secondary";
};

/** The phone's camera: the picture is made small and kept at once; sending comes later. */
export function TakePhoto({ jobId, field, caption, label, look }: Props) {
  const [keepOriginal, setKeepOriginal] = useState(false);
  const [problem, setProblem] = useState<string | null>(null);
  const id = useId();
  const take = async (file: File) => {
    const takenAt = new Date().toISOString();
    setProblem(null);
    try {
      const [small, where] = await Promise.all([shrinkPhoto(file), whereNow()]);
      await phone().keepPhoto({
        ...{ ...small, jobId, field, caption, takenAt },
        latitude: where?.latitude ?? null,
        longitude: where?.longitude ?? null,
        original: keepOriginal ? file : null,
      });
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
      {look === "primary" ? (
        <label htmlFor={id} className="choice flex min-h-11 items-center gap-2">
          <input
            id={id}
            type="checkbox"
            className="size-6 accent-accent"
            checked={keepOriginal}
            onChange={(event) => setKeepOriginal(event.target.checked)}
          />
          Keep the full picture on this phone as well
        </label>
      ) : null}
    </div>
  );
}
