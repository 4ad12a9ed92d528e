import { Badge } from "@/components/ui/badge";
import { TextLink } from "@/components/ui/button";
import { Card } from "@/components/ui/card";
import {
  PACKET_KIND_NAMES,
  PACKET_LANGUAGE_NAMES,
  PACKET_PAPER_NAMES,
  type Packet,
  type PacketShare,
} from "@/lib/domain/packets";
import type { Answer } from "../forms/use-sent-form";
import { type CheckDoor, CheckPacket } from "./check-packet";
import { SendPacket } from "./send-packet";
import { ShareList } from "./share-list";

export type PacketEntry = Packet & {
  readonly replacedBy: number | null;
  readonly shares: readonly PacketShare[];
};

type Props = {
  readonly jobId: string;
  readonly packets: readonly PacketEntry[];
  readonly customerEmail: string;
  /** When the page was made: links are open or expired as of then. */
  readonly now: string;
  readonly send: (input: unknown) => Promise<Answer>;
  readonly check: CheckDoor;
  readonly withdraw: (input: unknown) => Promise<Answer>;
};

/** Every packet made of this job, newest first, with the links that open it. */
export function PacketTable({ jobId, packets, customerEmail, now, send, check, withdraw }: Props) {
  if (packets.length === 0) return <p className="text-muted">No packet has been made yet.</p>;
  return (
    <ol aria-label="Packets made" className="grid gap-4">
      {packets.map((one) => (
        <li key={one.id}>
          <Card>
            <PacketHead jobId={jobId} packet={one} />
            <ShareList jobId={jobId} shares={one.shares} now={now} withdraw={withdraw} />
            <div className="mt-3 flex flex-wrap items-center gap-4">
              <TextLink href={`/api/jobs/${jobId}/packets/${one.id}`} prefetch={false}>
                Open (PDF, {one.pages} {one.pages === 1 ? "page" : "pages"})
              </TextLink>
              <TextLink href={`/api/jobs/${jobId}/packets/${one.id}?as=file`} prefetch={false}>
                Download
              </TextLink>
              {one.replacedBy === null ? null : (
                <TextLink href={`/api/jobs/${jobId}/packets/${one.id}?as=replaced`} prefetch={false}>
                  Copy marked as replaced
                </TextLink>
              )}
              <SendPacket
                jobId={jobId}
                packetId={one.id}
                name={`${PACKET_KIND_NAMES[one.kind]} ${one.revision}`}
                to={one.kind === "homeowner" || one.kind === "review" ? customerEmail : ""}
                isReplaced={one.replacedBy !== null}
                send={send}
              />
              <CheckPacket
                jobId={jobId}
                packetId={one.id}
                name={`${PACKET_KIND_NAMES[one.kind]} ${one.revision}`}
                check={check}
              />
            </div>
          </Card>
        </li>
      ))}
    </ol>
  );
}

function PacketHead({ packet: one }: { readonly jobId: string; readonly packet: PacketEntry }) {
  return (
    <>
      <div className="flex flex-wrap items-baseline justify-between gap-x-4 gap-y-1">
        <h3 className="font-semibold">
          {PACKET_KIND_NAMES[one.kind]} {one.revision}
        </h3>
        {one.replacedBy === null ? (
          <Badge tone="accent">newest</Badge>
        ) : (
          <Badge tone="muted">replaced by {one.replacedBy}</Badge>
        )}
      </div>
      <p className="text-sm text-muted">
        {PACKET_LANGUAGE_NAMES[one.language]}, {PACKET_PAPER_NAMES[one.paper]}, made{" "}
        {one.createdAt.slice(0, 10)} by {one.createdByName}
      </p>
      <p className="mt-1 text-xs text-muted">
        SHA-256 <code className="break-all">{one.sha256}</code>
      </p>
    </>
  );
}
