import type { Finding, Verdict } from "@/lib/engineering/findings";
import { FindingCard } from "./finding-card";

/** What needs a person first comes first. */
const GROUPS: readonly { readonly verdict: Verdict | null; readonly title: string }[] = [
  { verdict: "falls short", title: "Falls short" },
  { verdict: "can't tell", title: "Can’t tell with these readings" },
  { verdict: "not measured", title: "Not measured" },
  { verdict: "meets", title: "Meets" },
  { verdict: null, title: "For information" },
];

/** With more in a group all numbers are folded: a page of open numbers hides what is to be done. */
export const OPEN_AT_MOST = 3;

export type FindingListProps = {
  readonly findings: readonly Finding[];
  readonly ruleHref?: (ruleId: string) => string;
  /** Shown when there are none. */
  readonly empty?: string;
};

/** Findings in groups by verdict. Groups that hold nothing are left out. */
export function FindingList({ findings, ruleHref, empty = "Nothing to check yet." }: FindingListProps) {
  if (findings.length === 0) return <p className="text-sm text-muted">{empty}</p>;
  return (
    <div className="grid gap-5">
      {GROUPS.map(({ verdict, title }) => {
        const group = findings.filter((finding) => finding.verdict === verdict);
        if (group.length === 0) return null;
        return (
          <section key={title} className="grid min-w-0 gap-2">
            <h3 className="flex items-baseline gap-2 text-sm font-semibold">
              {title}
              <span className="font-normal text-muted">{group.length}</span>
            </h3>
            {group.map((finding, index) => (
              <FindingCard
                // biome-ignore lint/suspicious/noArrayIndexKey: one rule may speak more than once, as for each stage
                key={`${finding.ruleId} ${index}`}
                finding={finding}
                folded={group.length > OPEN_AT_MOST}
                {...(ruleHref === undefined ? {} : { ruleHref: ruleHref(finding.ruleId) })}
              />
            ))}
          </section>
        );
      })}
    </div>
  );
}
