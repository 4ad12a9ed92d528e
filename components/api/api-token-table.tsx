"use client";

import { Press } from "@/components/forms/press";
import type { Answer } from "@/components/forms/use-sent-form";
import { Badge } from "@/components/ui/badge";
import { EmptyState } from "@/components/ui/empty-state";
import { type Column, Table } from "@/components/ui/table";
import { API_ACCESS, API_TOKEN_STATES, type ApiToken, type ApiTokenState } from "@/lib/domain/api-tokens";
import { momentText } from "@/lib/domain/date-text";

type Row = ApiToken & { readonly state: ApiTokenState };
type Revoke = (input: unknown) => Promise<Answer>;
type Props = { readonly tokens: readonly Row[]; readonly timeZone: string; readonly revoke: Revoke };

/** Every token the company has made: what it may, whether it works, when it was last used. */
export function ApiTokenTable({ tokens, timeZone, revoke }: Props) {
  const columns: readonly Column<Row>[] = [
    {
      key: "name",
      head: "Token",
      rowHead: true,
      cell: ({ name, hint, createdAt, createdByName }) => (
        <>
          <span className="break-words">{name}</span>
          <span className="block font-normal text-muted">
            ends in {hint}; made {momentText(createdAt, timeZone)} by {createdByName}
          </span>
        </>
      ),
    },
    {
      key: "may",
      head: "May",
      cell: ({ access, lastUsedAt }) => (
        <>
          {API_ACCESS[access].label}
          <span className="block text-muted">
            {lastUsedAt === null ? "not used yet" : `last used ${momentText(lastUsedAt, timeZone)}`}
          </span>
        </>
      ),
    },
    {
      key: "state",
      head: "State",
      cell: (token) => (
        <>
          <Badge tone={token.state === "open" ? "accent" : "muted"}>{API_TOKEN_STATES[token.state]}</Badge>
          <span className="mb-2 block text-muted">
            {token.revokedAt === null
              ? `until ${momentText(token.expiresAt ?? token.createdAt, timeZone)}`
              : momentText(token.revokedAt, timeZone)}
          </span>
          {token.state === "open" ? (
            <Press
              act={() => revoke({ tokenId: token.id })}
              label={`Revoke ${token.name}`}
              busyText="Revoking…"
            >
              Revoke
            </Press>
          ) : null}
        </>
      ),
    },
  ];
  return (
    <Table
      label="API tokens"
      columns={columns}
      rows={tokens}
      rowKey={(token) => token.id}
      empty={
        <EmptyState title="No tokens yet">
          Make one for each program, so that each can be ended alone.
        </EmptyState>
      }
    />
  );
}
