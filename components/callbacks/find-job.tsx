import { Button, LinkButton } from "@/components/ui/button";
import { Card } from "@/components/ui/card";
import { TextField } from "@/components/ui/text-field";
import type { JobSummary } from "@/lib/domain/jobs";
import { TakeFocus } from "./take-focus";

type FindJobProps = {
  readonly find: string;
  /** Somebody is on the phone: the keyboard goes to the search, or to the first job found. */
  readonly isAsked: boolean;
  readonly jobs: readonly (JobSummary & { readonly addressLine: string })[];
};

/** The first step of taking a complaint down: whose house is it. */
export function FindJob({ find, isAsked, jobs }: FindJobProps) {
  return (
    <Card title="Someone is on the phone">
      {isAsked ? <TakeFocus to={jobs.length > 0 ? "a[data-found]" : "input[name=find]"} step={find} /> : null}
      <form action="/callbacks" className="flex flex-wrap items-end gap-3">
        <TextField
          name="find"
          label="Name, street or job number"
          type="search"
          defaultValue={find}
          autoComplete="off"
        />
        <Button type="submit">Find the job</Button>
        <p className="text-sm text-muted max-sm:hidden">
          <kbd>Alt</kbd>+<kbd>C</kbd> leads here from any page.
        </p>
      </form>
      {find === "" ? null : (
        <ul className="mt-4 grid gap-2" aria-label="Jobs found">
          {jobs.length === 0 ? <li className="text-muted">No job matches “{find}”.</li> : null}
          {jobs.map((job) => (
            <li key={job.id} className="flex flex-wrap items-center justify-between gap-3">
              <span>
                {job.number} {job.customerName}, {job.addressLine}, {job.place}
              </span>
              <LinkButton href={`/jobs/${job.id}/callbacks?new=1`} data-found="">
                Log a callback<span className="sr-only"> of {job.customerName}</span>
              </LinkButton>
            </li>
          ))}
        </ul>
      )}
    </Card>
  );
}
