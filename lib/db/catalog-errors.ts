import { AppError } from "@/lib/errors";

/** Someone else changed it since this person opened it. */
export function movedOn(): AppError {
  return new AppError(
    "CONFLICT",
    "Someone has changed this since you opened it. Open it again to see how it is now; what you typed is still here.",
  );
}
