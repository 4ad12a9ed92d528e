import { Button, LinkButton } from "@/components/ui/button";
import { Card } from "@/components/ui/card";
import { TextField } from "@/components/ui/text-field";
import type { JobSummary } from "@/lib/domain/jobs";

/** The first step of taking a complaint down: whose house is it. */
export function FindJob({ find, jobs }: { readonly find: string; readonly jobs: readonly JobSummary[] }) {
  return (
    <Card title="Someone is on the phone">
      <form action="/callbacks" className="flex flex-wrap items-end gap-3">
        <TextField
          name="find"
          label="Name, street or job number"
          type="search"
          defaultValue={find}
          autoComplete="off"
        />
        <Button type="submit">Find the job</Button>
      </form>
      {find === "" ? null : (
        <ul className="mt-4 grid gap-2" aria-label="Jobs found">
          {jobs.length === 0 ? <li className="text-muted">No job matches “{find}”.</li> : null}
          {jobs.map((job) => (
            <li key={job.id} className="flex flex-wrap items-center justify-between gap-3">
              <span>
                {job.number} {job.customerName}, {job.place}
              </span>
              <LinkButton href={`/jobs/${job.id}/callbacks`}>
                Log a callback<span className="sr-only"> of {job.customerName}</span>
              </LinkButton>
            </li>
          ))}
        </ul>
      )}
    </Card>
  );
}
