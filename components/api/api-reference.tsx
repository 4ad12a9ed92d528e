import type { ReactNode } from "react";
import { TextLink } from "@/components/ui/button";
import { API_ACCESS, API_CALLS_A_MINUTE } from "@/lib/domain/api-tokens";
import { API_BASE, API_ENDPOINTS } from "@/lib/schemas/api";
import { REFUSALS } from "@/lib/schemas/api/openapi";
import { Code } from "./code";
import { EndpointEntry } from "./endpoint-entry";
import { WebhookReference } from "./webhook-reference";

/** How a company's own programs read and add, made of what the doors themselves are made of. */
export function ApiReference({ server }: { readonly server: string }) {
  return (
    <main id="content" className="mx-auto grid max-w-4xl grid-cols-[minmax(0,1fr)] gap-8 px-5 py-10">
      <header className="grid gap-2">
        <h1 className="text-2xl">The API</h1>
        <p className="max-w-prose">
          What a company’s own programs may read and add: jobs, ledgers, findings, packets, callbacks, logs.
          The same description for programs:{" "}
          <TextLink href={`${API_BASE}/openapi.json`}>OpenAPI 3.1</TextLink>.
        </p>
      </header>
      <Chapter title="Begin">
        <ol className="grid list-decimal grid-cols-[minmax(0,1fr)] gap-2 pl-5">
          <li>
            An owner makes a token under Company → API tokens. It is shown once; keep it where secrets are
            kept.
          </li>
          <li>
            Send it with every call, and nothing else that proves who you are:
            <Code>{`export DEWLEDGER_TOKEN=dewl_…\ncurl "${server}${API_BASE}/jobs?limit=5" \\\n  -H "Authorization: Bearer $DEWLEDGER_TOKEN"`}</Code>
          </li>
        </ol>
      </Chapter>
      <Chapter title="Rules that hold everywhere">
        <ul className="grid list-disc grid-cols-[minmax(0,1fr)] gap-1 pl-5">
          <li>
            Answers are JSON. Days are 2026-07-31, instants end in Z, every number stands beside its unit.
          </li>
          <li>
            Lists answer <code>nextCursor</code>; give it as <code>cursor</code> until it is null.
          </li>
          <li>
            A call that adds something carries an <code>Idempotency-Key</code>: a UUID made for it. After a
            lost answer send the same call with the same key; it is done once.
          </li>
          <li>
            Readings carry an <code>ETag</code>; with it in <code>If-None-Match</code> the answer is 304 while
            nothing has changed.
          </li>
          <li>A token may call {API_CALLS_A_MINUTE} times a minute.</li>
          <li>Fields may be added to version 1. None is renamed, taken away or given another meaning.</li>
        </ul>
      </Chapter>
      <Chapter title="What can be refused">
        <p>Every refusal has one shape; each field that is wrong is named with the fix:</p>
        <Code>{`{"code": "INVALID_INPUT", "message": "limit: give a whole number from 1 to 200.",\n "fields": [{"field": "limit", "message": "limit: give a whole number from 1 to 200."}],\n "details": {}}`}</Code>
        <dl className="mt-3 grid gap-x-4 gap-y-1 sm:grid-cols-[3rem_1fr]">
          {Object.entries(REFUSALS).map(([status, words]) => (
            <div key={status} className="contents">
              <dt className="font-semibold">{status}</dt>
              <dd>{words}</dd>
            </div>
          ))}
        </dl>
      </Chapter>
      <Chapter title="Calls">
        <div className="grid grid-cols-[minmax(0,1fr)] gap-8">
          {API_ENDPOINTS.map((endpoint) => (
            <EndpointEntry
              key={endpoint.name}
              endpoint={endpoint}
              server={server}
              access={API_ACCESS[endpoint.access].label}
            />
          ))}
        </div>
      </Chapter>
      <Chapter title="Webhooks" id="webhooks">
        <WebhookReference />
      </Chapter>
    </main>
  );
}

type ChapterProps = { readonly title: string; readonly id?: string; readonly children: ReactNode };

function Chapter({ title, id, children }: ChapterProps) {
  return (
    <section id={id} className="min-w-0">
      <h2 className="mb-3 border-b border-rule-strong pb-1 text-xl">{title}</h2>
      {children}
    </section>
  );
}
