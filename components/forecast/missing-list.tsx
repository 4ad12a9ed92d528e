import { TextLink } from "@/components/ui/button";
import { type ForecastMissing, missingHref } from "@/lib/domain/forecast";

/** What a forecast still needs, each leading to its field. */
export function MissingList({
  jobId,
  missing,
}: {
  readonly jobId: string;
  readonly missing: readonly ForecastMissing[];
}) {
  return (
    <ul className="grid list-disc gap-1.5 pl-4 text-sm">
      {missing.map((one) => {
        const href = missingHref(jobId, one);
        return (
          <li key={one.text}>{href === null ? one.text : <TextLink href={href}>{one.text}</TextLink>}</li>
        );
      })}
    </ul>
  );
}
