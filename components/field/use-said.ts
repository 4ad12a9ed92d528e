import { NOTHING_SAID, type Said, saidOf } from "@/lib/domain/startup-said";
import type { WalkScreen } from "@/lib/domain/startup-walk";
import { useEvaluation } from "./use-evaluation";
import type { Work } from "./use-job";

/** What this screen's readings say at once. */
export function useSaid({ context, values }: Work, screen: WalkScreen): Said {
  const evaluation = useEvaluation(context);
  return evaluation === null ? NOTHING_SAID : saidOf(evaluation, screen, values);
}
