import type { JobId } from "@/lib/domain/ids";
import { createJobSchema } from "@/lib/schemas/job";
import { createJob } from "@/lib/services/jobs";
import type { Actor, DemoWorld } from "./world";

export type DemoJob = {
  readonly title: string;
  readonly customerName: string;
  readonly addressLine: string;
  readonly city: string;
  readonly region: "TX" | "IN";
  readonly elevationFt: number;
  readonly techs?: readonly Actor[];
  readonly startupDue?: string;
  readonly reviewDue?: string;
  readonly note?: string;
  readonly builder?: string;
};

/** ZIP codes no post office uses. */
const POSTAL_CODES = { TX: "77000", IN: "46000" } as const;

/** Opens a job as the office manager, for an invented customer at an invented address. */
export function openJob(world: DemoWorld, job: DemoJob): Promise<JobId> {
  const { techs = [], note = "", ...rest } = job;
  return createJob(
    world.scopes.office,
    createJobSchema.parse({
      ...rest,
      customerEmail: `customer${job.addressLine.replace(/\D/g, "")}@homeowner.example`,
      customerPhone: "555-0199",
      postalCode: POSTAL_CODES[job.region],
      weatherFileId: world.weatherFileId,
      techIds: techs.map((tech) => world.scopes[tech].userId),
      note: `Demo job: people, place and readings are invented.${note === "" ? "" : ` ${note}`}`,
    }),
  );
}
