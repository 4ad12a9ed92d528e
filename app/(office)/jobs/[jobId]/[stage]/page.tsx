import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { ControlCrewCard } from "@/components/stage/control-crew-card";
import { RecordState } from "@/components/stage/record-state";
import { ReopenPanel } from "@/components/stage/reopen-panel";
import { SignPanel } from "@/components/stage/sign-panel";
import { StageForm } from "@/components/stage/stage-form";
import { STAGE_NAMES, stageOfSlug } from "@/lib/domain/stages";
import { load, pageScope } from "@/lib/server/page";
import { stageView } from "@/lib/services/job-view";
import { chosenModel, reopenRecord } from "../../actions";
import { SAVE, SIGN } from "../../stage-actions";
import { HumiditySheets } from "./humidity-sheets";
import { ReportsOfJob } from "./reports-of-job";
import { VersionOfRecord } from "./version-of-record";

type Props = { readonly params: Promise<{ readonly jobId: string; readonly stage: string }> };

export async function generateMetadata({ params }: Props): Promise<Metadata> {
  const stage = stageOfSlug((await params).stage);
  return { title: stage ? STAGE_NAMES[stage] : "Not found" };
}

export default async function StagePage({ params }: Props) {
  const scope = await pageScope("job.read");
  const { jobId, stage: slug } = await params;
  const stage = stageOfSlug(slug);
  if (!stage) notFound();
  const view = await load(stageView(scope, jobId, stage));
  const { record } = view;
  return (
    <div className="grid gap-6">
      <RecordState
        record={record}
        revisions={view.revisions}
        verdictNow={view.verdictNow}
        timeZone={view.timeZone}
      />
      {stage === "humidity_review" ? (
        <HumiditySheets scope={scope} job={view.job} context={view.context} />
      ) : null}
      <VersionOfRecord scope={scope} view={view} />
      <StageForm
        key={`revision ${record?.revision ?? 1} ${record?.state === "signed"}`}
        jobId={jobId}
        stage={stage}
        fields={view.fields}
        inputs={view.inputs}
        version={record?.version ?? null}
        context={view.context}
        catalog={view.choices}
        mayEdit={view.mayEdit}
        save={SAVE[stage]}
        readModel={chosenModel}
      />
      {stage === "load_summary" ? <ReportsOfJob scope={scope} jobId={jobId} /> : null}
      {stage === "control_setup" ? (
        <ControlCrewCard inputs={view.context.inputs.control_setup} control={view.control} />
      ) : null}
      {view.maySign && record ? (
        <SignPanel
          jobId={jobId}
          stage={stage}
          version={record.version}
          name={view.signerName}
          sign={SIGN[stage]}
        />
      ) : null}
      {view.mayReopen ? <ReopenPanel jobId={jobId} stage={stage} reopen={reopenRecord} /> : null}
    </div>
  );
}
