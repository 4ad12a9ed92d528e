import { Badge } from "@/components/ui/badge";
import { type Column, Table } from "@/components/ui/table";
import type { ApiEndpoint } from "@/lib/domain/api-endpoint";
import { API_BASE } from "@/lib/schemas/api";
import { endpointReference, type ReferenceRow } from "@/lib/schemas/api/reference";
import { Code } from "./code";

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
      <div className="mt-3 grid gap-3">
        <Rows title="Asked with" rows={asked} what={endpoint.summary} />
        <Rows title="Body, JSON" rows={body} what={endpoint.summary} />
        {endpoint.body.kind === "file" ? (
          <p className="text-sm">
            <span className="font-semibold">Body:</span> {endpoint.body.what}.
          </p>
        ) : null}
        <details>
          <summary className="cursor-pointer font-semibold">Answers {endpoint.status}</summary>
          <div className="mt-2">
            <Rows title="" rows={answer} what={endpoint.summary} always />
          </div>
        </details>
      </div>
    </article>
  );
}

type RowsProps = {
  readonly title: string;
  readonly rows: readonly ReferenceRow[];
  readonly what: string;
  /** True where every field is always there. */
  readonly always?: boolean;
};

function Rows({ title, rows, what, always = false }: RowsProps) {
  if (rows.length === 0) return null;
  const columns: readonly Column<ReferenceRow>[] = [
    {
      key: "name",
      head: "Name",
      rowHead: true,
      cell: ({ name, required }) => (
        <>
          <code className="break-all">{name}</code>
          {always || required ? null : <span className="block font-normal text-muted">may be left out</span>}
        </>
      ),
    },
    { key: "type", head: "Type", cell: ({ type }) => <span className="break-words">{type}</span> },
    { key: "words", head: "What it is", cell: ({ words }) => words },
  ];
  return (
    <div className="min-w-0">
      {title === "" ? null : <p className="mb-1 text-sm font-semibold">{title}</p>}
      <Table
        label={`${what}: ${title || "answer"}`}
        columns={columns}
        rows={rows}
        rowKey={(row) => row.name}
      />
    </div>
  );
}
