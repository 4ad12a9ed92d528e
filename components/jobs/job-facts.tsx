import type { Answer } from "@/components/forms/use-sent-form";
import { TextLink } from "@/components/ui/button";
import { Card } from "@/components/ui/card";
import { Quantity } from "@/components/ui/quantity";
import type { Job } from "@/lib/domain/jobs";
import { CorrectJob } from "./correct-job";

/** Who, where, when. */
export function JobFacts({
  job,
  correct,
}: {
  readonly job: Job;
  /** For those who may put them right. */
  readonly correct: ((input: unknown) => Promise<Answer>) | null;
}) {
  const facts: readonly (readonly [string, React.ReactNode])[] = [
    ["Customer", job.customer.name],
    ["Phone", job.customer.phone || "not given"],
    ["E-mail", job.customer.email || "not given"],
    ["Elevation", <Quantity key="elevation" value={job.home.elevationFt} unit="ft" decimals={0} />],
    [
      "Weather year",
      <TextLink key="weather" href={`/jobs/${job.id}/weather`}>
        {job.weatherFileId === null ? "none yet: choose one" : "see or change it"}
      </TextLink>,
    ],
    ...(job.home.builder === "" ? [] : [["Builder", job.home.builder] as const]),
    ["Assigned", job.techs.map((tech) => tech.name).join(", ") || "nobody yet"],
    ["Startup", job.startupDue ?? "no date"],
    ["Humidity review", job.reviewDue ?? "no date"],
    ...(job.note === "" ? [] : [["Note", job.note] as const]),
  ];
  return (
    <Card title="Job" aside={correct === null ? undefined : <CorrectJob job={job} correct={correct} />}>
      <dl className="grid grid-cols-[auto_1fr] gap-x-4 gap-y-1.5 text-sm">
        {facts.map(([label, value]) => (
          <div key={label} className="contents">
            <dt className="text-muted">{label}</dt>
            <dd>{value}</dd>
          </div>
        ))}
      </dl>
    </Card>
  );
}
