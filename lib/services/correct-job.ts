import { jobs } from "@/lib/db/jobs";
import { stageRecords } from "@/lib/db/stage-records";
import { withTenant } from "@/lib/db/with-tenant";
import type { TenantScope } from "@/lib/domain/scope";
import type { CorrectJobInput } from "@/lib/schemas/job";
import { getJob } from "./jobs";
import { judgeJob } from "./judge-again";

/** Corrects who and where a job is, with both on the trail, and judges it anew: the air follows from the elevation. */
export function correctJob(scope: TenantScope, input: CorrectJobInput): Promise<void> {
  return withTenant(scope, async () => {
    const { id } = await getJob(scope, input.jobId);
    await stageRecords(scope).lock(id);
    const job = await getJob(scope, id);
    const { title, note, customerName: name, customerEmail: email, customerPhone: phone } = input;
    const { addressLine, city, region, postalCode, elevationFt, builder } = input;
    await jobs(scope).correct(job, input.expectedVersion, {
      title,
      note,
      customer: { name, email, phone },
      home: { addressLine, city, region, postalCode, elevationFt, builder },
    });
    await judgeJob(scope, job.id);
  });
}
