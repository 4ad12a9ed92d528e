"use client";

import { usePathname } from "next/navigation";
import { VerdictMark } from "@/components/findings/verdict-mark";
import { PageHeader } from "@/components/shell/page-header";
import { LinkButton } from "@/components/ui/button";
import { TabLinks } from "@/components/ui/tab-links";
import type { Job } from "@/lib/domain/jobs";
import { STAGE_NAMES, STAGE_SLUGS, STAGES, type StageKey } from "@/lib/domain/stages/keys";
import type { Verdict } from "@/lib/engineering/findings";

type Props = {
  readonly job: Job;
  readonly states: Readonly<Record<string, string | null>>;
  readonly verdicts: Readonly<Record<StageKey, Verdict | null>>;
  readonly mayMakePacket: boolean;
  readonly mayEditCallbacks: boolean;
  readonly mayAsk: boolean;
};

/** Whose job it is, and the index tabs: the ledger first, the options, then the six stage records. */
export function JobHeader({ job, states, verdicts, mayMakePacket, mayEditCallbacks, mayAsk }: Props) {
  const path = usePathname();
  const base = `/jobs/${job.id}`;
  const tabs = [
    { href: base, label: "Ledger", current: path === base },
    { href: `${base}/options`, label: "Options", current: path === `${base}/options` },
    ...STAGES.map((stage) => ({
      href: `${base}/${STAGE_SLUGS[stage]}`,
      label: STAGE_NAMES[stage],
      current: path === `${base}/${STAGE_SLUGS[stage]}`,
      mark: states[stage] ? <VerdictMark verdict={verdicts[stage]} look="shape" /> : undefined,
    })),
  ];
  return (
    <>
      <PageHeader
        title={`${job.number} ${job.customer.name}`}
        crumbs={[{ href: "/jobs", label: "Jobs" }]}
        actions={
          <>
            {mayMakePacket ? <LinkButton href={`${base}/packet`}>Packet</LinkButton> : null}
            {mayAsk ? <LinkButton href={`${base}/field`}>Field</LinkButton> : null}
            {mayEditCallbacks ? <LinkButton href={`${base}/callbacks`}>Callbacks</LinkButton> : null}
            <LinkButton href={`${base}/trail`} variant="quiet">
              Trail
            </LinkButton>
          </>
        }
        lead={`${job.home.addressLine}, ${job.home.city}, ${job.home.region} ${job.home.postalCode}${job.title ? `. ${job.title}` : ""}`}
      />
      <TabLinks label="Parts of this job" tabs={tabs} />
      <div className="h-5" />
    </>
  );
}
