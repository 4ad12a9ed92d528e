import { afterAll, beforeAll, expect, test } from "vitest";
import { closeDatabase } from "@/lib/db/client";
import { correctJobSchema, jobListSchema } from "@/lib/schemas/job";
import { activityView } from "@/lib/services/activity";
import { correctJob } from "@/lib/services/correct-job";
import { listJobs } from "@/lib/services/job-table";
import { getJob } from "@/lib/services/jobs";
import { type Crew, makeCrew } from "../support/people";
import { openJob, refusedBy } from "../support/service-jobs";

let crew: Crew;
beforeAll(async () => {
  crew = await makeCrew();
});
afterAll(closeDatabase);

const RIGHT = {
  title: "Upstairs",
  customerName: "Odette Brackwater-Lyle",
  customerEmail: "odette@example.com",
  customerPhone: "555-0177",
  addressLine: "12 Reed Lane",
  city: "Saltmere",
  region: "TX",
  postalCode: "77550",
  elevationFt: "1,250 ft",
  builder: "",
  note: "Key under the mat",
};

test("what was taken down wrong is put right, found at once, and both stand on the trail", async () => {
  const jobId = await openJob(crew.office);
  const before = await getJob(crew.office, jobId);
  await correctJob(crew.office, correctJobSchema.parse({ jobId, expectedVersion: before.version, ...RIGHT }));
  const job = await getJob(crew.office, jobId);
  expect([job.customer.name, job.customer.phone, job.home.elevationFt, job.title, job.note]).toEqual([
    "Odette Brackwater-Lyle",
    "555-0177",
    1250,
    "Upstairs",
    "Key under the mat",
  ]);
  // What was planned is as it was.
  expect([job.startupDue, job.techs, job.weatherFileId]).toEqual([
    before.startupDue,
    before.techs,
    before.weatherFileId,
  ]);
  const found = await listJobs(crew.office, jobListSchema.parse({ search: "reed lane odette" }));
  expect(found.jobs.map(({ id }) => id)).toEqual([jobId]);
  const { lines } = await activityView(crew.owner, undefined);
  const told = lines
    .map((line) => JSON.stringify(line))
    .find((line) => line.includes("Odette Brackwater-Lyle"));
  expect(told).toContain(before.customer.name);
  expect(told).toContain("Saltmere");

  const stale = correctJobSchema.parse({ jobId, expectedVersion: before.version, ...RIGHT, city: "Lost" });
  expect((await refusedBy(correctJob(crew.owner, stale))).code).toBe("CONFLICT");
  expect((await getJob(crew.office, jobId)).home.city).toBe("Saltmere");
});
