"use client";

import { Press } from "@/components/forms/press";
import { EmptyState } from "@/components/ui/empty-state";
import { type Column, Table } from "@/components/ui/table";
import { momentText } from "@/lib/domain/date-text";
import { ROLE_NAMES } from "@/lib/domain/roles";
import type { MemberRow, Send } from "./member-actions";

type Invitation = {
  readonly id: string;
  readonly email: string;
  readonly name: string;
  readonly role: MemberRow["role"];
  readonly expiresAt: string;
};
type Props = {
  readonly invitations: readonly Invitation[];
  readonly timeZone: string;
  readonly withdraw: Send;
};

/** Links that were sent and not used yet. */
export function MemberInvitations({ invitations, timeZone, withdraw }: Props) {
  const columns: readonly Column<Invitation>[] = [
    {
      key: "name",
      head: "Invited",
      rowHead: true,
      cell: ({ name, email }) => (
        <>
          {name}
          <span className="block font-normal break-all text-muted">{email}</span>
        </>
      ),
    },
    { key: "role", head: "As", cell: ({ role }) => ROLE_NAMES[role] },
    { key: "until", head: "Link works until", cell: ({ expiresAt }) => momentText(expiresAt, timeZone) },
    {
      key: "withdraw",
      head: <span className="sr-only">Withdraw</span>,
      cell: ({ id, name }) => (
        <Press
          act={() => withdraw({ invitationId: id })}
          label={`Withdraw the invitation of ${name}`}
          busyText="Withdrawing…"
        >
          Withdraw
        </Press>
      ),
    },
  ];
  return (
    <Table
      label="Open invitations"
      columns={columns}
      rows={invitations}
      rowKey={(invitation) => invitation.id}
      empty={
        <EmptyState title="No open invitations">Used, withdrawn and expired ones are not listed.</EmptyState>
      }
    />
  );
}
