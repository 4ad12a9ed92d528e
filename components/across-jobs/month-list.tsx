import { TextLink } from "@/components/ui/button";
import type { KeptMonth } from "@/lib/domain/month-digest";
import { PACKET_PAPER_NAMES } from "@/lib/domain/packets";

/** Every digest made, newest month first, with the hash of its bytes. */
export function MonthList({ months }: { readonly months: readonly KeptMonth[] }) {
  if (months.length === 0) return <p className="text-muted">No month has been made yet.</p>;
  return (
    <ol aria-label="Months made" className="divide-y divide-rule border-y border-rule">
      {months.map((one, at) => {
        const isNewest = months[at - 1]?.month !== one.month;
        return (
          <li key={one.id} className="py-3">
            <p className="flex flex-wrap items-baseline gap-x-4">
              <TextLink href={`/api/across-jobs/months/${one.id}`} prefetch={false}>
                {one.month}, revision {one.revision} (PDF, {one.pages} {one.pages === 1 ? "page" : "pages"})
              </TextLink>
              {isNewest ? null : <span className="text-muted">replaced</span>}
            </p>
            <p className="text-sm text-muted">
              {PACKET_PAPER_NAMES[one.paper]}, made {one.createdAt.slice(0, 10)} by {one.createdByName}
            </p>
            <p className="text-xs text-muted">
              SHA-256 <code className="break-all">{one.sha256}</code>
            </p>
          </li>
        );
      })}
    </ol>
  );
}
