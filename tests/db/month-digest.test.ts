import { afterAll, beforeAll, expect, test } from "vitest";
import { closeDatabase } from "@/lib/db/client";
import { sha256Of } from "@/lib/files/store";
import { renderView } from "@/lib/reports/render-view";
import { logCallback } from "@/lib/services/callbacks";
import { readView } from "@/lib/services/kept-view";
import { listMonths, monthDigest, readMonth } from "@/lib/services/month-digest";
import { readPdf } from "../reports/read-pdf";
import { type Crew, given, makeCrew } from "../support/people";
import { openJob, refusedBy } from "../support/service-jobs";

let crew: Crew;
beforeAll(async () => {
  crew = await makeCrew();
});
afterAll(closeDatabase);

test("a month is kept with its hash, made once while nothing changes, and again when something did", async () => {
  const first = await monthDigest(crew.owner, "2026-07");
  const again = await monthDigest(crew.owner, "2026-07", new Date(Date.now() + 86_400_000));
  expect(again.id).toBe(first.id);
  expect(Buffer.from(again.bytes).equals(Buffer.from(first.bytes))).toBe(true);
  const jobId = await openJob(crew.office);
  await logCallback(crew.office, {
    jobId,
    kind: "musty",
    reportedOn: "2026-07-14",
    reportedByName: "",
    complaint: "Damp in the mornings.",
  });
  const next = await monthDigest(crew.owner, "2026-07");
  expect(next.id).not.toBe(first.id);
  const months = await listMonths(crew.owner);
  expect(months.map((one) => [one.month, one.revision])).toEqual([
    ["2026-07", 2],
    ["2026-07", 1],
  ]);
  for (const one of months) {
    const { bytes } = await readMonth(crew.owner, one.id);
    expect(sha256Of(bytes)).toBe(one.sha256);
    const view = await readView(crew.owner.tenantId, one.viewSha256);
    expect(sha256Of(await renderView(view))).toBe(one.sha256);
  }
  const read = await readPdf(next.bytes);
  expect(read.text).toContain("Callbacks reported 1");
});

test("two owners who make the same month at the same moment get one", async () => {
  const [one, other] = await Promise.all([
    monthDigest(crew.owner, "2026-03"),
    monthDigest(crew.owner, "2026-03"),
  ]);
  expect(one.id).toBe(other.id);
});

test("another company's month, and one that is not there, are nothing", async () => {
  const { id } = await monthDigest(crew.owner, "2026-02");
  const stranger = (await makeCrew()).owner;
  expect((await refusedBy(readMonth(stranger, id))).code).toBe("NOT_FOUND");
  expect((await refusedBy(readMonth(crew.owner, "no id"))).code).toBe("NOT_FOUND");
  expect(given(await listMonths(crew.owner)).length).toBeGreaterThan(0);
  expect(await listMonths(stranger)).toEqual([]);
});
