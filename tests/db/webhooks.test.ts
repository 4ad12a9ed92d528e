import { createHmac } from "node:crypto";
import type { ServerResponse } from "node:http";
import type { Client } from "pg";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test, vi } from "vitest";
import { openSecret, sealSecret } from "@/lib/auth/sealed-secret";
import { activity } from "@/lib/db/activity";
import { closeDatabase } from "@/lib/db/client";
import { packets } from "@/lib/db/packets";
import { stageRecords } from "@/lib/db/stage-records";
import { webhookDeliveries } from "@/lib/db/webhook-deliveries";
import { webhooks } from "@/lib/db/webhooks";
import { workItems } from "@/lib/db/work-items";
import type { JobId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { DELIVERY_TRIES, FAILURES_TO_OFF, WEBHOOK_EVENT_KEYS } from "@/lib/domain/webhooks";
import { eventBody } from "@/lib/schemas/api/events";
import { logCallback } from "@/lib/services/callbacks";
import { mailWebhookOff } from "@/lib/services/company-mail/webhook-mail";
import { deliverWebhook } from "@/lib/services/deliver-webhook";
import { importLog } from "@/lib/services/import-log";
import { mailPacket, sendPacket } from "@/lib/services/packet-sending";
import { scheduleJob } from "@/lib/services/plan-job";
import { reopenStage } from "@/lib/services/stages";
import { tellDueReviews } from "@/lib/services/tell-due-reviews";
import { tellWebhooks } from "@/lib/services/tell-webhooks";
import {
  addWebhook,
  removeWebhook,
  resendDelivery,
  switchWebhook,
  testWebhook,
} from "@/lib/services/webhooks";
import { connect, inRole } from "../support/connect";
import { type HookServer, startHookServer } from "../support/hook-server";
import { type Crew, given, makeCrew } from "../support/people";
import { LOAD, openJob, STARTUP, save, sign } from "../support/service-jobs";

const URL_OF_HOOK = "https://hook.example.com/in";
const COMPLAINT = {
  kind: "musty",
  reportedOn: "2026-07-20",
  reportedByName: "",
  complaint: "Smells",
} as const;

let client: Client;
let server: HookServer;
let answer: (response: ServerResponse) => void;
let crew: Crew;
let owner: TenantScope;
let job: JobId;
let secret: string;
let webhookId: string;

beforeAll(async () => {
  client = await connect();
  server = await startHookServer((response) => answer(response));
});
beforeEach(async () => {
  answer = (response) => response.end();
  server.heard.length = 0;
  crew = await makeCrew();
  owner = crew.owner;
  job = await openJob(crew.office, { techIds: [crew.tech.userId] });
  ({ secret } = await addWebhook(owner, { url: URL_OF_HOOK, events: [...WEBHOOK_EVENT_KEYS] }));
  webhookId = (await hook()).id;
});
afterEach(() => vi.useRealTimers());
afterAll(async () => {
  await server.close();
  await client.end();
  await closeDatabase();
});

const hook = async () => given((await webhooks(owner).list())[0]);
const history = () => webhookDeliveries(owner).list(webhookId, 50);
const newest = async () => given((await history())[0]);
const complain = () => logCallback(crew.office, { jobId: job, ...COMPLAINT });
const refuse = (status: number) => {
  answer = (response) => {
    response.writeHead(status);
    response.end();
  };
};
const deliver = (deliveryId: string) => deliverWebhook(owner, { deliveryId }, server.network);
/** All tries of a delivery that never arrives. */
async function giveUp(deliveryId: string): Promise<void> {
  for (let tried = 1; tried <= DELIVERY_TRIES; tried++) {
    const code = tried === DELIVERY_TRIES ? "INVALID_INPUT" : "UNAVAILABLE";
    await expect(deliver(deliveryId)).rejects.toMatchObject({ code });
  }
}
const queued = async (task: string) =>
  (await workItems(owner).list(["waiting"], { take: 100 })).filter((one) => one.task === task);

describe("what happens is told", () => {
  const told = async () => (await history()).map(({ event }) => event).toReversed();

  test("a callback, once, with what the API says of its shape, and one delivery is on the queue", async () => {
    const callbackId = await complain();
    expect(await told()).toEqual(["callback.opened"]);
    expect(await queued("deliver webhook")).toHaveLength(1);
    // One after the other, so that addresses that do not answer hold one place of the worker.
    const { rows } = await client.query(
      "SELECT queue_name FROM graphile_worker._private_job_queues WHERE starts_with(queue_name, $1)",
      [owner.tenantId],
    );
    expect(rows).toEqual([{ queue_name: `${owner.tenantId}:deliver webhook` }]);
    await deliver((await newest()).id);
    const body = eventBody("callback.opened")
      .strict()
      .parse(JSON.parse(given(server.heard[0]).body));
    expect(body).toMatchObject({
      id: (await newest()).id,
      data: { jobId: job, callbackId, kind: "musty", reportedOn: "2026-07-20", again: false },
    });
  });

  test("a signed startup, by the tech who signs; a load summary is none of it", async () => {
    await save(crew.office, job, "load_summary", LOAD);
    await sign(crew.office, job, "load_summary", 1);
    await save(crew.tech, job, "startup_record", STARTUP);
    await sign(crew.tech, job, "startup_record", 1);
    expect(await told()).toEqual(["startup.signed"]);
  });

  test("a signed review whose log is too humid, and not one whose log is dry", async () => {
    await save(crew.office, job, "load_summary", LOAD);
    const log = async (rhPct: number) => {
      const rows = Array.from({ length: 240 }, (_, hour) => {
        const at = new Date(Date.UTC(2026, 6, 1, hour)).toISOString().slice(0, 16).replace("T", " ");
        // A reading that never moves would be a stuck sensor, which falls short too.
        return `${at},${75 + (hour % 5) * 0.3},${rhPct + (hour % 7) * 0.5}`;
      });
      const bytes = new TextEncoder().encode(
        `Local time,Indoor temperature F,Indoor RH %\n${rows.join("\n")}\n`,
      );
      const upload = { jobId: job, fileName: "log.csv", bytes, mapping: null };
      return (await importLog(crew.office, { ...upload, sourceName: `Sensor ${rhPct}` })).importId;
    };
    await save(crew.office, job, "humidity_review", { logImportId: await log(45), conclusion: "kept" });
    await sign(crew.office, job, "humidity_review", 1);
    expect(await told()).toEqual([]);
    await reopenStage(crew.office, { jobId: job, stage: "humidity_review", reason: "Another sensor" });
    const inputs = { logImportId: await log(70), conclusion: "kept" } as const;
    const { version } = given((await stageRecords(owner).latest(job)).humidity_review);
    await save(crew.office, job, "humidity_review", inputs, version);
    await sign(crew.office, job, "humidity_review", version + 1);
    expect(await told()).toEqual(["review.fell_short"]);
  });

  test("a packet that was sent, and not one that could not be", async () => {
    await save(crew.office, job, "load_summary", LOAD);
    const packetId = await packets(crew.office).add({
      jobId: job,
      kind: "homeowner",
      language: "en",
      paper: "letter",
      revision: 1,
      sha256: "a".repeat(64),
      inputsHash: "",
      engineVersion: "1",
      sizeBytes: 1,
      pages: 1,
      viewSha256: "",
      renderer: "",
    });
    const asked = { jobId: job, packetId, message: "", days: 30, attach: false } as const;
    const sent = await sendPacket(crew.office, { ...asked, to: "someone@example.com" });
    expect(await told()).toEqual([]);
    await mailPacket(crew.office, sent);
    expect(await told()).toEqual(["packet.sent"]);
    await mailPacket(crew.office, sent);
    expect(await told()).toEqual(["packet.sent"]);
  });

  test("a review that is due: from its day on, once, and not one of long ago", async () => {
    const dueOn = "2026-07-10";
    await scheduleJob(crew.office, {
      jobId: job,
      expectedVersion: 1,
      startupDue: null,
      reviewDue: dueOn,
      techIds: [],
    });
    const at = (day: string) => tellDueReviews(owner, new Date(`${day}T18:00:00Z`));
    await at("2026-07-09");
    expect(await told()).toEqual([]);
    await at("2026-07-20");
    expect(await told()).toEqual([]);
    await at("2026-07-10");
    await at("2026-07-11");
    expect(await told()).toEqual(["review.due"]);
  });

  test("an occasion is told once, also when it is told at the same moment", async () => {
    const data = { jobId: job, jobNumber: 1, dueOn: "2026-07-10" };
    await Promise.all(Array.from({ length: 4 }, () => tellWebhooks(owner, "review.due", "one", data)));
    expect(await told()).toEqual(["review.due"]);
    expect(await queued("deliver webhook")).toHaveLength(1);
  });

  test("not what was not picked, not what is off, not another company's", async () => {
    await removeWebhook(owner, { webhookId });
    await addWebhook(owner, { url: URL_OF_HOOK, events: ["packet.sent"] });
    await addWebhook((await makeCrew()).owner, { url: URL_OF_HOOK, events: ["callback.opened"] });
    await complain();
    expect(await queued("deliver webhook")).toEqual([]);
    await removeWebhook(owner, { webhookId: (await hook()).id });
    await addWebhook(owner, { url: URL_OF_HOOK, events: ["callback.opened"] });
    await switchWebhook(owner, { webhookId: (await hook()).id, on: false });
    await complain();
    expect(await queued("deliver webhook")).toEqual([]);
  });

  test("nothing when what was to be told did not happen after all", async () => {
    await expect(logCallback(crew.office, { ...COMPLAINT, jobId: crypto.randomUUID() })).rejects.toThrow();
    expect(await history()).toEqual([]);
  });
});

describe("a delivery", () => {
  test("is signed over its time and its body, with the secret that was shown", async () => {
    await complain();
    await deliver((await newest()).id);
    const { headers, body } = given(server.heard[0]);
    const [, time, digest] = given(
      /^signed-at=(\d+); sha256=([0-9a-f]{64})$/.exec(String(headers["dewledger-signature"])),
    );
    expect(createHmac("sha256", secret).update(`${time}.${body}`).digest("hex")).toBe(digest);
    expect(Math.abs(Number(time) - Date.now() / 1_000)).toBeLessThan(60);
    expect(headers["dewledger-delivery"]).toBe(JSON.parse(body).id);
    expect(await newest()).toMatchObject({ state: "done", attempts: 1, responseStatus: 200, problem: "" });
  });

  test("is tried again while it does not arrive, and says why", async () => {
    await complain();
    const { id } = await newest();
    refuse(503);
    await expect(deliver(id)).rejects.toMatchObject({ code: "UNAVAILABLE" });
    expect(await newest()).toMatchObject({
      state: "waiting",
      attempts: 1,
      responseStatus: 503,
      problem: "It answered 503.",
    });
    refuse(302);
    await expect(deliver(id)).rejects.toThrow("Redirects are not followed");
    refuse(204);
    await deliver(id);
    expect(await newest()).toMatchObject({ state: "done", attempts: 3, responseStatus: 204 });
    expect(new Set(server.heard.map(({ headers }) => headers["dewledger-delivery"]))).toEqual(new Set([id]));
  });

  test("does not go where the name leads inside, whatever it was when it was added", async () => {
    await complain();
    const { isPublicAddress } = await import("@/lib/webhooks/public-address");
    const inside = { ...server.network, mayReach: isPublicAddress };
    await expect(deliverWebhook(owner, { deliveryId: (await newest()).id }, inside)).rejects.toThrow(
      "not open",
    );
    expect(server.heard).toEqual([]);
  });

  test("is not made twice, and not once the webhook is off or gone", async () => {
    await complain();
    const { id } = await newest();
    await deliver(id);
    expect(await deliver(id)).toContain("already");
    await complain();
    const other = await newest();
    await switchWebhook(owner, { webhookId, on: false });
    expect(await deliver(other.id)).toContain("off");
    expect(await newest()).toMatchObject({ id: other.id, state: "failed" });
    expect(server.heard).toHaveLength(1);
  });

  test("is sent again when asked for, under the same id, and told on the trail", async () => {
    await complain();
    const { id } = await newest();
    refuse(500);
    await giveUp(id);
    expect(await newest()).toMatchObject({ state: "failed", attempts: DELIVERY_TRIES });
    const before = (await queued("deliver webhook")).length;
    await resendDelivery(owner, { deliveryId: id });
    // The work of the first round still waits in this test, which runs none; its key is the same.
    expect((await queued("deliver webhook")).length).toBe(before);
    expect(await newest()).toMatchObject({ state: "waiting", attempts: 0 });
    refuse(200);
    await deliver(id);
    expect(await newest()).toMatchObject({ state: "done" });
    const [entry] = await activity(owner).list({ take: 1 });
    expect(entry).toMatchObject({
      action: "webhook delivery sent again",
      after: { event: "callback.opened" },
    });
  });

  test("of a test goes to one webhook, whatever it picked", async () => {
    await testWebhook(owner, { webhookId });
    await deliver((await newest()).id);
    expect(JSON.parse(given(server.heard[0]).body)).toMatchObject({ event: "test", data: {} });
  });
});

describe("a webhook where nothing arrives", () => {
  async function giveUpOne(): Promise<string> {
    await testWebhook(owner, { webhookId });
    const { id } = await newest();
    // As after all tries but the last.
    const before = { attempts: DELIVERY_TRIES - 1, responseStatus: 500, problem: "" };
    await webhookDeliveries(owner).failed(id, before, false);
    await expect(deliver(id)).rejects.toMatchObject({ code: "INVALID_INPUT" });
    return id;
  }

  test("is switched off after a few deliveries were given up, and the owner is mailed once", async () => {
    refuse(500);
    for (let given = 1; given < FAILURES_TO_OFF; given++) await giveUpOne();
    expect(await hook()).toMatchObject({ failures: FAILURES_TO_OFF - 1, pausedAt: null });
    expect(await queued("mail about a webhook")).toEqual([]);
    const deliveryId = await giveUpOne();
    expect(await hook()).toMatchObject({ pausedAt: expect.any(String), pausedReason: "It answered 500." });
    expect(await queued("mail about a webhook")).toHaveLength(1);
    expect(await mailWebhookOff(owner, { webhookId, deliveryId })).toBe("Mailed to 1 person.");
    expect(await mailWebhookOff(owner, { webhookId, deliveryId })).toBe("Had been mailed before.");
    const [entry] = await activity(owner).list({ take: 1 });
    expect(entry).toMatchObject({ action: "webhook switched off by itself", reason: "It answered 500." });
  });

  test("has a clean slate after one arrived, and after it was switched on again", async () => {
    refuse(500);
    for (let given = 1; given < FAILURES_TO_OFF; given++) await giveUpOne();
    refuse(200);
    await testWebhook(owner, { webhookId });
    await deliver((await newest()).id);
    expect(await hook()).toMatchObject({ failures: 0 });
    refuse(500);
    for (let given = 0; given < FAILURES_TO_OFF; given++) await giveUpOne();
    await switchWebhook(owner, { webhookId, on: true });
    expect(await hook()).toMatchObject({ failures: 0, pausedAt: null, pausedReason: "" });
  });
});

describe("what is kept", () => {
  test("the secret is sealed, and opens nowhere else", async () => {
    const rows = await inRole(client, "app_user", owner, async () => {
      const all = await client.query(
        "SELECT to_jsonb(w)::text AS row FROM webhook w UNION ALL SELECT to_jsonb(a)::text FROM activity a",
      );
      return all.rows.map(({ row }) => row).join("\n");
    });
    expect(rows).not.toContain(secret.slice(9, 25));
    const sealed = sealSecret("a secret", "one");
    expect(openSecret(sealed, "one")).toBe("a secret");
    expect(openSecret(sealed, "another")).toBeNull();
    expect(openSecret(`${sealed.slice(0, -2)}AA`, "one")).toBeNull();
    expect(openSecret("", "one")).toBeNull();
    expect(sealSecret("a secret", "one")).not.toBe(sealed);
  });

  test("a removed webhook keeps no secret; its history stays", async () => {
    await complain();
    await removeWebhook(owner, { webhookId });
    expect(await webhooks(owner).list()).toEqual([]);
    expect(await history()).toHaveLength(1);
    expect((await webhookDeliveries(owner).find((await newest()).id))?.webhook).toMatchObject({
      secretSealed: "",
      isOn: false,
    });
    await expect(resendDelivery(owner, { deliveryId: (await newest()).id })).rejects.toMatchObject({
      code: "NOT_FOUND",
    });
  });

  test("an address inside a network is not taken", async () => {
    for (const url of ["https://127.0.0.1/", "http://hook.example.com/", "https://nas.local/"])
      await expect(addWebhook(owner, { url, events: ["packet.sent"] })).rejects.toMatchObject({
        code: "INVALID_INPUT",
        fields: [{ field: "url" }],
      });
  });
});
