import type { TenantScope } from "@/lib/domain/scope";
import type { JobListQuery } from "@/lib/schemas/job";
import { countJobs } from "@/lib/services/job-table";

type Props = { readonly scope: TenantScope; readonly query: JobListQuery; readonly shown: number };

/** How many jobs there are. Waited for by itself: the page is there before they are counted. */
export async function JobCount({ scope, query, shown }: Props) {
  return `${shown} shown of ${await countJobs(scope, query)}`;
}
