import { Suspense } from "react";
import type { TenantScope } from "@/lib/domain/scope";
import type { JobListQuery } from "@/lib/schemas/job";
import { countJobs } from "@/lib/services/job-table";

type Props = { readonly scope: TenantScope; readonly query: JobListQuery; readonly shown: number };

/** How many jobs there are. The page is there before they are counted. */
export function JobCount(props: Props) {
  return (
    <Suspense fallback={`${props.shown} shown`}>
      <Counted {...props} />
    </Suspense>
  );
}

async function Counted({ scope, query, shown }: Props) {
  return `${shown} shown of ${await countJobs(scope, query)}`;
}
