import { capital } from "@/lib/charts/number-text";
import type { Basis, Certainty } from "@/lib/engineering/findings";

/** How sure the source is, in words a reader can weigh. */
const CERTAINTY_WORDS: Readonly<Record<Certainty, string>> = {
  published: "read in the source",
  computed: "follows by calculation",
  recalled: "from memory, sure",
  unverified: "from memory, still to be checked against the source",
  practice: "common practice, no source",
};

/** What a rule rests on and how certain that is. */
export function BasisLine({ basis }: { readonly basis: Basis }) {
  const certainty = CERTAINTY_WORDS[basis.certainty];
  // A habit of the trade says so once.
  if (basis.source === certainty) return <span>{capital(certainty)}</span>;
  const kind = basis.kind === certainty ? null : basis.kind;
  return (
    <span>
      {kind === null ? null : <span>{capital(kind)}: </span>}
      {basis.source} <span className="whitespace-nowrap">[{certainty}]</span>
    </span>
  );
}
