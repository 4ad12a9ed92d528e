import { Card } from "@/components/ui/card";
import { SafetyCaution } from "@/components/ui/safety-caution";
import { whatToBring } from "@/lib/domain/what-to-bring";
import type { Work } from "./use-job";

/** What this job needs in the van, worked out from it. */
export function BringList({ work }: { readonly work: Work }) {
  const { things, caution } = whatToBring(work.context, new Date().toISOString().slice(0, 10));
  return (
    <Card title="What to bring">
      <ul className="grid list-disc gap-1 pl-5">
        {things.map((thing) => (
          <li key={thing.what}>
            {thing.what}
            {thing.remark === null ? null : <span className="block text-sm text-muted">{thing.remark}</span>}
          </li>
        ))}
      </ul>
      {caution === null ? null : (
        <div className="mt-3">
          <SafetyCaution>{caution}</SafetyCaution>
        </div>
      )}
    </Card>
  );
}
