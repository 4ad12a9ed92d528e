"use client";

import { ActionForm } from "@/components/forms/action-form";
import { Refusal } from "@/components/forms/refusal";
import { type Answer, useSentForm } from "@/components/forms/use-sent-form";
import { Badge } from "@/components/ui/badge";
import { Button } from "@/components/ui/button";
import { type PacketShare, type ShareState, shareState } from "@/lib/domain/packets";

type Props = {
  readonly jobId: string;
  readonly shares: readonly PacketShare[];
  readonly now: string;
  readonly withdraw: (input: unknown) => Promise<Answer>;
};

const TONES = { open: "accent", expired: "muted", withdrawn: "muted" } as const satisfies Record<
  ShareState,
  string
>;

/** The links that open one packet: to whom, until when, and whether they were used. */
export function ShareList({ jobId, shares, now, withdraw }: Props) {
  if (shares.length === 0) return null;
  return (
    <ul aria-label="Links" className="mt-3 divide-y divide-rule border-y border-rule">
      {shares.map((share) => (
        <ShareLine key={share.id} jobId={jobId} share={share} now={now} withdraw={withdraw} />
      ))}
    </ul>
  );
}

function ShareLine({ jobId, share, now, withdraw }: Omit<Props, "shares"> & { readonly share: PacketShare }) {
  const state = shareState(share, new Date(now));
  const [sent, send, busy] = useSentForm(() => withdraw({ jobId, shareId: share.id }));
  const who = share.purpose === "code" ? "Code printed in the packet" : share.sentTo;
  return (
    <li className="flex flex-wrap items-center justify-between gap-x-4 gap-y-1 py-2 text-sm">
      <div className="min-w-0">
        <p className="break-words">
          <span className="font-semibold">{who}</span> <Badge tone={TONES[state]}>{state}</Badge>
        </p>
        <p className="text-muted">
          {sentText(share)}, opens until {share.expiresAt.slice(0, 10)}; {openedText(share)}
        </p>
        {share.sendProblem === "" ? null : <p className="text-short">Not sent: {share.sendProblem}</p>}
        <Refusal form={sent} title="The link was not withdrawn" />
      </div>
      {state === "open" ? (
        <ActionForm action={send}>
          <Button type="submit" variant="quiet" busy={busy} aria-label={`Withdraw the link: ${who}`}>
            Withdraw
          </Button>
        </ActionForm>
      ) : null}
    </li>
  );
}

function sentText({ purpose, sentAt, createdAt, revokedAt, sendProblem }: PacketShare): string {
  if (sentAt !== null) return `Sent ${sentAt.slice(0, 10)}`;
  if (purpose === "code" || revokedAt !== null) return `Made ${createdAt.slice(0, 10)}`;
  return sendProblem === "" ? "Being sent" : "Tried again by itself; see background work";
}

function openedText({ openCount, lastOpenedAt }: PacketShare): string {
  if (openCount === 0 || lastOpenedAt === null) return "not opened yet";
  const times = openCount === 1 ? "once" : `${openCount} times`;
  return `opened ${times}, last on ${lastOpenedAt.slice(0, 10)}`;
}
