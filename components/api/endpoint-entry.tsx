import { Badge } from "@/components/ui/badge";
import type { ApiEndpoint } from "@/lib/domain/api-endpoint";
import { API_BASE } from "@/lib/schemas/api";
import { endpointReference } from "@/lib/schemas/api/reference";
import { Code } from "./code";
import { ReferenceRows } from "./reference-rows";

type Props = { readonly endpoint: ApiEndpoint; readonly server: string; readonly access: string };

/** One call: what it takes, what it answers, how to make it. */
export function EndpointEntry({ endpoint, server, access }: Props) {
  const { id, asked, body, answer, curl } = endpointReference(endpoint, server);
  return (
    <article id={id} className="min-w-0">
      <h3 className="text-lg">{endpoint.summary}</h3>
      <p className="mt-1 font-mono text-sm break-all">
        <Badge>{endpoint.method}</Badge> {API_BASE}
        {endpoint.path}
      </p>
      <p className="mt-2 max-w-prose">
        {endpoint.description}
        {endpoint.access === "write" ? ` The token must be made for: ${access.toLowerCase()}.` : ""}
      </p>
      <Code>{curl}</Code>
      <div className="mt-3 grid grid-cols-[minmax(0,1fr)] gap-3">
        <ReferenceRows title="Asked with" rows={asked} what={endpoint.summary} />
        <ReferenceRows title="Body, JSON" rows={body} what={endpoint.summary} />
        {endpoint.body.kind === "file" ? (
          <p className="text-sm">
            <span className="font-semibold">Body:</span> {endpoint.body.what}.
          </p>
        ) : null}
        <details>
          <summary className="cursor-pointer font-semibold">Answers {endpoint.status}</summary>
          <div className="mt-2">
            <ReferenceRows title="" rows={answer} what={endpoint.summary} always />
          </div>
        </details>
      </div>
    </article>
  );
}
