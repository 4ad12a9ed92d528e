import type { Metadata } from "next";
import { CallbackTable } from "@/components/callbacks/callback-table";
import { FindJob } from "@/components/callbacks/find-job";
import { PageHeader } from "@/components/shell/page-header";
import { Pagination } from "@/components/ui/pagination";
import { TabLinks } from "@/components/ui/tab-links";
import { CALLBACK_STATE_KEYS, CALLBACK_STATES } from "@/lib/domain/callbacks";
import { callbackListSchema } from "@/lib/schemas/callback";
import { pageScope } from "@/lib/server/page";
import { CALLBACKS_A_PAGE, findJobs, listCallbacks } from "@/lib/services/callbacks";

export const metadata: Metadata = { title: "Callbacks" };

type Search = Readonly<Record<string, string | string[] | undefined>>;

export default async function CallbacksPage({ searchParams }: { readonly searchParams: Promise<Search> }) {
  const scope = await pageScope("callback.edit");
  const search = await searchParams;
  const query = callbackListSchema.parse(search);
  const [{ callbacks, of, today }, jobs] = await Promise.all([
    listCallbacks(scope, query),
    findJobs(scope, query.find),
  ]);
  const first = (query.page - 1) * CALLBACKS_A_PAGE;
  const href = (state: string | null, page = 1) =>
    `/callbacks?${new URLSearchParams({ ...(state ? { state } : {}), ...(page > 1 ? { page: String(page) } : {}) })}`;
  return (
    <>
      <PageHeader title="Callbacks" lead="Open ones first, the most pressing on top." />
      <div className="mt-4 grid gap-6">
        <FindJob find={query.find} isAsked={search.find !== undefined} jobs={jobs} />
        <TabLinks
          label="State"
          tabs={[null, ...CALLBACK_STATE_KEYS].map((state) => ({
            href: href(state),
            label: state === null ? "All" : CALLBACK_STATES[state],
            current: state === query.state,
          }))}
        />
        <CallbackTable callbacks={callbacks} today={today} />
        {of > CALLBACKS_A_PAGE ? (
          <Pagination
            summary={`${first + 1} to ${first + callbacks.length} of ${of.toLocaleString("en-US")} callbacks`}
            previousHref={query.page > 1 ? href(query.state, query.page - 1) : null}
            nextHref={first + callbacks.length < of ? href(query.state, query.page + 1) : null}
          />
        ) : null}
      </div>
    </>
  );
}
