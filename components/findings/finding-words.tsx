import type { Finding } from "@/lib/engineering/findings";
import { SafetyCaution } from "../ui/safety-caution";

/** What a finding says, what to do next, and the caution that goes with it. */
export function FindingWords({ finding }: { readonly finding: Finding }) {
  return (
    <>
      <p className="mt-1 text-sm">{finding.statement}</p>
      {finding.nextStep === null ? null : (
        <p className="mt-2 text-sm">
          <strong>Next: </strong>
          {finding.nextStep}
        </p>
      )}
      {finding.caution === null ? null : (
        <div className="mt-2">
          <SafetyCaution>{finding.caution}</SafetyCaution>
        </div>
      )}
    </>
  );
}
