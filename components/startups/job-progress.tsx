"use client";

import { VerdictMark } from "@/components/findings/verdict-mark";
import { TextLink } from "@/components/ui/button";
import { Card } from "@/components/ui/card";
import type { StartupProgress } from "@/lib/domain/startup-progress";
import { contactText, counted, STATE_WORDS, stillOnPhone } from "./progress-words";
import { StaleNotice } from "./stale-notice";
import { useLiveProgress } from "./use-live-progress";

type Props = {
  readonly first: StartupProgress;
  readonly timeZone: string;
  /** Leave out on the page it would lead to. */
  readonly href?: string;
};

/** One job's startup while it happens. */
export function JobProgress({ first, timeZone, href }: Props) {
  const { startups, isStale } = useLiveProgress(`/api/field/progress/${first.jobId}`, [first]);
  const now = startups[0] ?? first;
  const waiting = stillOnPhone(now);
  return (
    <Card
      title="Startup in the field"
      aside={href === undefined ? undefined : <TextLink href={href}>Photos and questions</TextLink>}
    >
      <div className="grid gap-2">
        {isStale ? <StaleNotice /> : null}
        <p className="flex flex-wrap items-center gap-x-3">
          <strong>
            {now.neededDone} of {now.needed} needed readings
          </strong>
          <VerdictMark verdict={now.verdict} />
        </p>
        <progress
          className="h-2 w-full appearance-none bg-rule [&::-moz-progress-bar]:bg-accent [&::-webkit-progress-bar]:bg-rule [&::-webkit-progress-value]:bg-accent"
          value={now.neededDone}
          max={now.needed}
          aria-label="Needed readings done"
        />
        <p className="text-sm">
          {STATE_WORDS[now.state]}; {now.entered} entered; {counted(now.photos, "photo")}
          {waiting === null ? "" : `; ${waiting}`}.
        </p>
        <p className="text-sm text-muted">Last contact: {contactText(now.lastContact, timeZone)}</p>
        {now.late > 0 ? <p className="text-sm font-semibold">{now.late} late to decide</p> : null}
      </div>
    </Card>
  );
}
