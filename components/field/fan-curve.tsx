import { DuctCurve } from "@/components/charts/duct-curve";
import { measuredAirflowPicture } from "@/lib/domain/pictures/measured-airflow";
import { useEvaluation } from "./use-evaluation";
import type { Work } from "./use-job";

type Props = { readonly work: Work; readonly stage: "first" | "second" };

/** Where the measured static lies on the maker's fan table, beside the point that was designed. */
export function FanCurve({ work, stage }: Props) {
  const evaluation = useEvaluation(work.context);
  const picture = evaluation && measuredAirflowPicture(work.context, evaluation, stage);
  if (!picture) return null;
  return (
    <DuctCurve
      title="Your static on the maker’s fan table"
      note="Filled: measured, on the curve of the setting. Ring: designed."
      {...picture}
    />
  );
}
