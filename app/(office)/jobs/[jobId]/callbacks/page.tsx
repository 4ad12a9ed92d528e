import type { Metadata } from "next";
import { CallbackCard } from "@/components/callbacks/callback-card";
import { CallbackIntake } from "@/components/callbacks/callback-intake";
import { TakeFocus } from "@/components/callbacks/take-focus";
import { load, pageScope } from "@/lib/server/page";
import { jobCallbacks } from "@/lib/services/callbacks";
import { companyToday } from "@/lib/services/company-today";
import { takeDown, workOn } from "../../../callbacks/actions";

export const metadata: Metadata = { title: "Callbacks" };

export default async function JobCallbacksPage({
  params,
  searchParams,
}: {
  readonly params: Promise<{ readonly jobId: string }>;
  readonly searchParams: Promise<{ readonly new?: string | readonly string[] }>;
}) {
  const scope = await pageScope("callback.edit");
  const [{ jobId }, asked] = await Promise.all([params, searchParams]);
  const callbacks = await load(jobCallbacks(scope, jobId));
  return (
    <div className="grid items-start gap-6 lg:grid-cols-[minmax(0,2fr)_minmax(0,3fr)]">
      {asked.new === undefined ? null : <TakeFocus to="select[name=kind]" step={jobId} />}
      <CallbackIntake jobId={jobId} today={await companyToday(scope)} send={takeDown} />
      <div className="grid gap-6">
        {callbacks.length === 0 ? <p className="text-muted">No callback on this job.</p> : null}
        {callbacks.map((one) => (
          <CallbackCard key={`${one.id} ${one.version}`} callback={one} send={workOn} />
        ))}
      </div>
    </div>
  );
}
