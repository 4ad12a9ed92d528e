import type { Metadata } from "next";
import { CompanyTabs } from "@/components/company/company-tabs";
import { PageHeader } from "@/components/shell/page-header";
import { EmptyState } from "@/components/ui/empty-state";
import { Pagination } from "@/components/ui/pagination";
import { FollowWork } from "@/components/work/follow-work";
import { WorkList } from "@/components/work/work-list";
import { pageScope } from "@/lib/server/page";
import { workView } from "@/lib/services/work";
import { tryAgain } from "./actions";

export const metadata: Metadata = { title: "Background work" };

type Props = { readonly searchParams: Promise<{ readonly before?: string }> };

export default async function WorkPage({ searchParams }: Props) {
  const scope = await pageScope("work.manage");
  const { before } = await searchParams;
  const { items, olderThan, timeZone } = await workView(scope, before);
  return (
    <>
      <PageHeader
        title="Background work"
        crumbs={[{ href: "/company", label: "Company" }]}
        lead="What goes on without anyone waiting for it, newest first. Work that fails is tried again by itself, with growing pauses; what still fails stands here until you try it again."
      />
      <CompanyTabs current="work" />
      <div className="mt-5">
        {items.length === 0 ? (
          <EmptyState title="Nothing here">
            {before ? "There is no older work." : "The first work in the background will stand here."}
          </EmptyState>
        ) : (
          <WorkList items={items} timeZone={timeZone} tryAgain={tryAgain} />
        )}
        <FollowWork active={items.some((item) => item.state === "running" || item.state === "waiting")} />
        {items.length === 0 && !before ? null : (
          <Pagination
            summary={before ? "Older work" : "The newest work"}
            previousHref={before ? "/company/work" : null}
            nextHref={olderThan ? `/company/work?before=${olderThan}` : null}
          />
        )}
      </div>
    </>
  );
}
