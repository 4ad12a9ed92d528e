import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, expect, test } from "vitest";
import { closeDatabase } from "@/lib/db/client";
import { thermostatDrift } from "@/lib/db/thermostat-drift";
import { withTenant } from "@/lib/db/with-tenant";
import type { JobId } from "@/lib/domain/ids";
import { driftSentence } from "@/lib/domain/thermostat-drift";
import { instrumentsReport } from "@/lib/services/instrument-report";
import { type Crew, makeCrew } from "../support/people";
import { openJob } from "../support/service-jobs";

let crew: Crew;
beforeAll(async () => {
  crew = await makeCrew();
});
afterAll(closeDatabase);

type Set = { readonly on: string; readonly f?: number; readonly pct?: number; readonly atStartup?: true };

/** A job whose thermostat was set like this, one signed revision after the other. */
async function setOverTime(sets: readonly Set[], model: string | null = randomUUID()): Promise<JobId> {
  const jobId = await openJob(crew.office);
  const last = sets.findLastIndex((set) => !set.atStartup);
  await withTenant(crew.office, async (tx) => {
    for (const [index, { on, f, pct, atStartup }] of sets.entries()) {
      await tx.stageRecord.create({
        data: {
          tenantId: crew.office.tenantId,
          jobId,
          stage: atStartup ? "startup_record" : "control_setup",
          revision: atStartup ? 1 : index + 1,
          ...(atStartup || index === 0 ? {} : { reopenReason: "set again" }),
          schemaVersion: 1,
          state: atStartup || index === last ? "signed" : "superseded",
          inputs: atStartup
            ? { leftTemperatureCorrectionF: f ?? null, leftHumidityCorrectionPct: pct ?? null }
            : {
                controlModelId: model,
                indoorTemperatureCorrectionF: f ?? null,
                indoorHumidityCorrectionPct: pct ?? null,
              },
          engineVersion: "test",
          signedBy: crew.office.userId,
          signedAt: new Date(`${on}T12:00:00Z`),
          signatureName: "Test",
          createdBy: crew.office.userId,
          updatedBy: crew.office.userId,
        },
      });
    }
  });
  return jobId;
}

test("thermostats whose correction moved are named, the most moved first; those that stayed, or moved on one visit, are not", async () => {
  const two = await setOverTime([
    { on: "2026-03-01", f: -0.3 },
    { on: "2026-09-01", f: -1.8 },
  ]);
  const far = await setOverTime([
    { on: "2026-02-01", f: 0, pct: 2 },
    { on: "2026-05-01", atStartup: true, f: 0.1, pct: 4 },
    { on: "2026-10-01", f: 0.2, pct: 9 },
  ]);
  await setOverTime([
    { on: "2026-03-01", f: -0.3 },
    { on: "2026-09-01", f: -1.2 },
  ]);
  // Left otherwise than designed, on the same visit.
  await setOverTime([
    { on: "2026-06-01", f: 0 },
    { on: "2026-06-02", atStartup: true, f: 2 },
  ]);
  // Only one of them says a temperature.
  await setOverTime([{ on: "2026-03-01" }, { on: "2026-09-01", f: -3 }]);
  const found = await thermostatDrift(crew.owner, "2025-01-01");
  expect(found.map(({ jobId }) => jobId)).toEqual([far, two]);
  expect(found[0]).toMatchObject({ checks: 3, firstOn: "2026-02-01", lastOn: "2026-10-01", changeRhPct: 7 });
  expect(found[1]?.changeF).toBeCloseTo(-1.5, 10);
  expect(found.map(driftSentence).map((words) => words.split(":")[0])).toEqual([
    "Its correction had to move by +7 % RH",
    "Its correction had to move by −1.5 °F",
  ]);
  expect((await thermostatDrift(crew.owner, "2026-04-01")).map(({ jobId }) => jobId)).toEqual([far]);
});

test("another company sees none of it; a thermostat of no model is nobody's", async () => {
  await setOverTime(
    [
      { on: "2026-03-01", f: 0 },
      { on: "2026-09-01", f: 5 },
    ],
    null,
  );
  expect((await instrumentsReport(crew.owner, new Date("2026-11-26T12:00:00Z"))).thermostats).toHaveLength(2);
  const other = await makeCrew();
  expect((await instrumentsReport(other.owner, new Date("2026-11-26T12:00:00Z"))).thermostats).toEqual([]);
});
