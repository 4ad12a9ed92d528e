import { Card } from "@/components/ui/card";
import { EmptyState } from "@/components/ui/empty-state";
import { hasTwoStages, screenState, startupWalk } from "@/lib/domain/startup-walk";
import type { FieldJob } from "@/lib/offline/bundle";
import { recordOf } from "@/lib/offline/bundle";
import { emptyDraft, heldFields, valuesOf, waiting } from "@/lib/offline/draft";
import type { PhoneState } from "@/lib/offline/phone-state";
import { FieldFrame } from "./field-frame";
import { LinkState } from "./link-state";
import { Notices } from "./notices";
import { OriginalsAsked } from "./originals-asked";
import { PhoneMenu } from "./phone-menu";
import { SendMark, type Whereabouts } from "./send-mark";
import { type Place, placeHref } from "./use-place";

type Props = { readonly state: PhoneState; readonly go: (place: Place) => void };

/** The jobs assigned to this person. */
export function TodayScreen({ state, go }: Props) {
  const { bundle } = state;
  const jobs = bundle?.jobs ?? [];
  return (
    <FieldFrame
      accent={bundle?.accent ?? null}
      brand={bundle?.companyName ?? "Dewledger"}
      title="Your jobs"
      lead={bundle?.personName}
      back={null}
      sendState={<LinkState state={state} />}
    >
      <Notices state={state} go={go} />
      {jobs.length === 0 ? (
        <EmptyState title="No job is assigned to you">The office assigns jobs; they appear here.</EmptyState>
      ) : (
        <div className="grid gap-6">
          <JobList title="To do" jobs={jobs.filter((job) => !job.isSigned)} state={state} go={go} />
          <JobList title="Startup signed" jobs={jobs.filter((job) => job.isSigned)} state={state} go={go} />
        </div>
      )}
      <OriginalsAsked state={state} jobId={null} />
      <PhoneMenu fetchedAt={state.fetchedAt} />
    </FieldFrame>
  );
}

type ListProps = Props & { readonly title: string; readonly jobs: readonly FieldJob[] };

function JobList({ title, jobs, state, go }: ListProps) {
  if (jobs.length === 0) return null;
  const byDay = jobs.toSorted((one, other) =>
    (one.startupDue ?? "9999").localeCompare(other.startupDue ?? "9999"),
  );
  return (
    <section>
      <h2 className="mb-2 font-semibold">{title}</h2>
      <ul className="grid gap-3">
        {byDay.map((job) => (
          <li key={job.id}>
            <JobCard job={job} state={state} go={go} />
          </li>
        ))}
      </ul>
    </section>
  );
}

function JobCard({ job, state, go }: { readonly job: FieldJob } & Props) {
  const draft = state.drafts[job.id];
  const values = valuesOf(draft ?? emptyDraft(recordOf(job)));
  const screens = startupWalk(job.context, values);
  const done = screens.filter((screen) => screenState(screen, values) === "done").length;
  const place = { job: job.id, at: null };
  return (
    <Card>
      <a
        href={placeHref(place)}
        onClick={(event) => {
          event.preventDefault();
          go(place);
        }}
        className="text-link flex min-h-11 items-center text-lg font-semibold"
      >
        {job.customerName}
      </a>
      <p>{job.address}</p>
      <p className="text-sm text-muted">
        Job {job.number}, startup {job.startupDue ?? "without a date"},{" "}
        {hasTwoStages(job.context) ? "two stages" : "one stage"}
      </p>
      <p className="mt-1 flex flex-wrap items-center justify-between gap-2 text-sm">
        <span>
          {job.isSigned ? "Signed" : `${done} of ${screens.length} readings`}
          {job.questions.some((one) => one.answer === null) ? (
            <strong className="text-caution"> · the office asks</strong>
          ) : null}
        </span>
        <JobMark job={job} state={state} />
      </p>
    </Card>
  );
}

/** Where a job's entries are. */
export function JobMark({ job, state }: { readonly job: FieldJob; readonly state: PhoneState }) {
  const draft = state.drafts[job.id];
  const items = [...state.photos, ...state.letters].filter((one) => one.jobId === job.id);
  const count = (draft ? waiting(draft) : 0) + items.filter((one) => one.state.at !== "office").length;
  const needsYou = (draft && heldFields(draft).length > 0) || items.some((one) => one.state.at === "refused");
  if (count === 0) return job.version === null && items.length === 0 ? null : <SendMark at="sent" />;
  const at: Whereabouts = needsYou ? "needs you" : state.sending ? "sending" : "phone";
  return <SendMark at={at} count={count} />;
}
