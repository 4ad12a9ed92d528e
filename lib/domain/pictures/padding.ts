import { type PaddingEffects, paddingEffects } from "@/lib/engineering/load";
import type { JobContext } from "../evaluate";
import { loadReadings } from "../evaluate/load";

/** The padding check's effects side by side; `null` while the entries contradict each other, which the findings say. */
export function paddingPicture(context: JobContext): PaddingEffects | null {
  try {
    return paddingEffects(loadReadings(context), context.limits);
  } catch {
    return null;
  }
}
