import type { Metadata } from "next";
import { JobProgress } from "@/components/startups/job-progress";
import { LatePanel } from "@/components/startups/late-panel";
import { PhotoStrip } from "@/components/startups/photo-strip";
import { QuestionsPanel } from "@/components/startups/questions-panel";
import { load, pageScope } from "@/lib/server/page";
import { fieldOfficeView } from "@/lib/services/field-office";
import * as actions from "../../field-actions";

export const metadata: Metadata = { title: "Field" };

export default async function FieldPage({
  params,
}: {
  readonly params: Promise<{ readonly jobId: string }>;
}) {
  const scope = await pageScope("question.ask");
  const { jobId } = await params;
  const view = await load(fieldOfficeView(scope, jobId));
  return (
    <div className="grid items-start gap-6 xl:grid-cols-2">
      <div className="grid content-start gap-6">
        <JobProgress first={view.progress} timeZone={view.timeZone} />
        <LatePanel
          jobId={jobId}
          values={view.late.values}
          photos={view.late.photos}
          decideValue={actions.decideLate}
          decidePhoto={actions.decidePhoto}
        />
        <PhotoStrip
          jobId={jobId}
          photos={view.photos}
          timeZone={view.timeZone}
          ask={actions.askOriginal}
          withdraw={actions.withdrawOriginal}
        />
      </div>
      <QuestionsPanel
        jobId={jobId}
        questions={view.questions}
        ask={actions.askQuestion}
        close={actions.closeQuestion}
      />
    </div>
  );
}
