import { Camera } from "lucide-react";
import { useState } from "react";
import { pictureProblemOf } from "@/lib/offline/phone-state";
import { takePicture } from "@/lib/offline/take-picture";
import { phone } from "./use-phone";

type Props = {
  readonly jobId: string;
  /** The field the picture proves; `null` for the job as a whole. */
  readonly field: string | null;
  readonly caption: string;
  readonly label: string;
  readonly look: "primary" | "secondary";
};

/** The phone's camera. The picture is kept at once; sending comes later. */
export function TakePhoto({ jobId, field, caption, label, look }: Props) {
  const [problem, setProblem] = useState<string | null>(null);
  const [isBusy, setIsBusy] = useState(false);
  const take = async (file: File) => {
    setProblem(null);
    setIsBusy(true);
    try {
      // Only until it is kept: its place and its sending may take longer.
      await takePicture(phone(), { jobId, field, caption, file }, { onKept: () => setIsBusy(false) });
    } catch (error) {
      setProblem(pictureProblemOf(error));
    } finally {
      setIsBusy(false);
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
        {isBusy ? "Keeping the picture…" : label}
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
