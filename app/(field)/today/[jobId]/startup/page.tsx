import type { Metadata } from "next";
import { FieldShell } from "@/components/shell/field-shell";
import { CrewSettings } from "@/components/stage/crew-settings";
import { RecordState } from "@/components/stage/record-state";
import { SignPanel } from "@/components/stage/sign-panel";
import { StageForm } from "@/components/stage/stage-form";
import { SafetyCaution } from "@/components/ui/safety-caution";
import { load, pageScope } from "@/lib/server/page";
import { stageView } from "@/lib/services/job-view";
import { shellView } from "@/lib/services/shell";
import * as actions from "../../../../(office)/jobs/actions";

export const metadata: Metadata = { title: "Startup record" };

export default async function StartupPage({
  params,
}: {
  readonly params: Promise<{ readonly jobId: string }>;
}) {
  const scope = await pageScope("startup.fill");
  const { jobId } = await params;
  const [view, shell] = await Promise.all([
    load(stageView(scope, jobId, "startup_record")),
    shellView(scope),
  ]);
  const { job, record } = view;
  return (
    <FieldShell
      brand={{ name: shell.companyName, accent: shell.accent, logoHref: shell.logoHref }}
      title={job.customer.name}
      lead={`${job.home.addressLine}, ${job.home.city}`}
      back={{ href: "/today", label: "Your jobs" }}
    >
      <div className="grid gap-5">
        <SafetyCaution>
          Mains voltage, pressure and a hot attic: lock out before opening a panel, wear eye protection, drink
          water. The manufacturer’s instructions and local codes govern; only certified technicians open the
          refrigerant circuit.
        </SafetyCaution>
        <CrewSettings context={view.context} />
        <RecordState record={record} revisions={view.revisions} verdictNow={view.verdictNow} />
        <StageForm
          key={`revision ${record?.revision ?? 1} ${record?.state === "signed"}`}
          jobId={job.id}
          stage="startup_record"
          fields={view.fields}
          inputs={view.inputs}
          version={record?.version ?? null}
          context={view.context}
          catalog={view.choices}
          mayEdit={view.mayEdit}
          save={actions.saveStartup}
          readModel={actions.chosenModel}
        />
        {view.maySign && record ? (
          <SignPanel
            jobId={job.id}
            stage="startup_record"
            version={record.version}
            name={view.signerName}
            sign={actions.signStartup}
          />
        ) : null}
      </div>
    </FieldShell>
  );
}
