import { Quantity } from "@/components/ui/quantity";
import type { TrailChange, TrailValue } from "@/lib/domain/trail";

/** From what to what, each value in words and units. */
export function TrailChanges({ changes }: { readonly changes: readonly TrailChange[] }) {
  if (changes.length === 0) return null;
  return (
    <dl className="mt-1 grid gap-x-4 gap-y-0.5 text-sm sm:grid-cols-[minmax(10rem,auto)_minmax(0,1fr)]">
      {changes.map(({ key, label, before, after }) => (
        <div key={key} className="contents">
          <dt className="text-muted">{label}</dt>
          <dd className="min-w-0 break-words max-sm:mb-1">
            {before === null ? null : (
              <>
                <Value value={before} /> <span aria-hidden="true">→</span>
                <span className="sr-only">changed to</span>{" "}
              </>
            )}
            <Value value={after} />
          </dd>
        </div>
      ))}
    </dl>
  );
}

function Value({ value }: { readonly value: TrailValue }) {
  if (value.kind === "quantity") return <Quantity {...value} />;
  if (value.kind === "text") return <span>{value.text}</span>;
  return <span className="text-muted">nothing</span>;
}
