import { BasisLine } from "@/components/findings/basis-line";
import { Badge } from "@/components/ui/badge";
import { Quantity } from "@/components/ui/quantity";
import { type Column, Table } from "@/components/ui/table";
import { numberText } from "@/lib/charts/number-text";
import { momentText } from "@/lib/domain/date-text";
import { LimitDialog, type LimitDoors } from "./limit-dialog";
import { LimitHistory } from "./limit-history";
import type { LimitRow, LimitRowWithHistory } from "./limit-row";

type Props = {
  readonly label: string;
  readonly limits: readonly LimitRowWithHistory[];
  readonly timeZone: string;
  /** Left out for people who may only read. */
  readonly doors?: LimitDoors | undefined;
};

/** The numbers a company may set: what counts now, what the product starts with, what is allowed. */
export function LimitTable({ label, limits, timeZone, doors }: Props) {
  const columns: readonly Column<LimitRowWithHistory>[] = [
    {
      key: "title",
      head: "Company limit",
      rowHead: true,
      cell: (limit) => (
        <div id={`limit-${limit.key}`} className="min-w-36">
          {limit.title}
          <span className="block text-xs font-normal text-muted">
            <BasisLine basis={limit.basis} />
          </span>
          <span className="block text-xs font-normal sm:hidden">
            Seed value {numberText(limit.seed, limit.decimals)}, allowed {allowed(limit)}
          </span>
          {limit.problem === null ? null : <span className="block text-short">{limit.problem}</span>}
          <Changes limit={limit} timeZone={timeZone} />
        </div>
      ),
    },
    {
      key: "force",
      head: "In force",
      numeric: true,
      cell: ({ inForce, unit, decimals, isOwn }) => (
        <>
          <Quantity value={inForce} unit={unit} decimals={decimals} className="font-semibold" />
          {isOwn ? (
            <span className="block">
              <Badge tone="accent">company's own</Badge>
            </span>
          ) : null}
        </>
      ),
    },
    {
      key: "seed",
      head: "Seed value",
      numeric: true,
      wideOnly: true,
      cell: ({ seed, unit, decimals }) => <Quantity value={seed} unit={unit} decimals={decimals} />,
    },
    {
      key: "range",
      head: "Allowed",
      numeric: true,
      wideOnly: true,
      cell: allowed,
    },
  ];
  const change: Column<LimitRowWithHistory> = {
    key: "change",
    head: <span className="sr-only">Change</span>,
    cell: (limit) => (doors ? <LimitDialog limit={limit} doors={doors} /> : null),
  };
  return (
    <Table
      label={label}
      columns={doors ? [...columns, change] : columns}
      rows={limits}
      rowKey={(limit) => limit.key}
    />
  );
}

/** Who changed it last; opened, every change of it. */
function Changes({ limit, timeZone }: { readonly limit: LimitRowWithHistory; readonly timeZone: string }) {
  const [last] = limit.history;
  if (last === undefined) return null;
  return (
    <details className="mt-1 text-xs font-normal">
      <summary className="cursor-pointer py-1 text-muted">
        Changed by {last.who}, {momentText(last.at, timeZone)}
        {limit.history.length === 1 ? "" : ` and ${limit.history.length - 1} times before`}
      </summary>
      <LimitHistory history={limit.history} timeZone={timeZone} />
    </details>
  );
}

function allowed({ min, max, decimals }: LimitRow): string {
  return `${numberText(min, decimals)} to ${numberText(max, decimals)}`;
}
