import type { Metadata } from "next";
import { CallbackTable } from "@/components/callbacks/callback-table";
import { PageHeader } from "@/components/shell/page-header";
import { pageScope } from "@/lib/server/page";
import { listCallbacks } from "@/lib/services/callbacks";

export const metadata: Metadata = { title: "Callbacks" };

export default async function CallbacksPage() {
  const scope = await pageScope("callback.edit");
  const callbacks = await listCallbacks(scope);
  return (
    <>
      <PageHeader
        title="Callbacks"
        lead="Open ones first. A callback is logged on its job: find the job, then choose Callbacks."
      />
      <CallbackTable callbacks={callbacks} />
    </>
  );
}
