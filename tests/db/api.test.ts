import { randomUUID } from "node:crypto";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { GET as noSuchCall } from "@/app/api/v1/[...rest]/route";
import { activity } from "@/lib/db/activity";
import { callbacks } from "@/lib/db/callbacks";
import { closeDatabase } from "@/lib/db/client";
import { workItems } from "@/lib/db/work-items";
import type { JobId } from "@/lib/domain/ids";
import { addApiToken } from "@/lib/services/api-tokens";
import { logCallback } from "@/lib/services/callbacks";
import { runLogImport } from "@/lib/services/log-queue";
import { callApi } from "../support/call-api";
import { type Crew, given, makeCrew } from "../support/people";
import { LOAD, openJob, save } from "../support/service-jobs";

let crew: Crew;
let token: string;
let jobs: readonly JobId[];

beforeAll(async () => {
  crew = await makeCrew();
  ({ token } = await addApiToken(crew.owner, { name: "Bookkeeping", access: "write", days: "30" }));
  jobs = [await openJob(crew.office), await openJob(crew.office), await openJob(crew.office)];
  await save(crew.office, job(), "load_summary", LOAD);
}, 60_000);
afterAll(closeDatabase);

const job = () => given(jobs[0]);
const ofJob = () => ({ params: { jobId: job() } });

describe("lists go on by cursor", () => {
  test("jobs: every one once, newest first", async () => {
    const first = await callApi("listJobs", token, { query: { limit: "2" } });
    const second = await callApi("listJobs", token, {
      query: { limit: "2", cursor: first.json.nextCursor },
    });
    const ids = [...first.json.jobs, ...second.json.jobs].map(({ id }: { id: string }) => id);
    expect(ids).toEqual(jobs.toReversed());
    expect(second.json.nextCursor).toBeNull();
  });

  test("jobs: a filter holds", async () => {
    const { json } = await callApi("listJobs", token, {
      query: { verdict: "meets", stage: "humidity_review" },
    });
    expect(json).toEqual({ jobs: [], nextCursor: null });
  });

  test("callbacks: every one once, newest first, and of one job", async () => {
    const { owner, office } = await makeCrew();
    const own = (await addApiToken(owner, { name: "x", access: "read", days: "30" })).token;
    const [one, other] = [await openJob(office), await openJob(office)];
    const said = { kind: "noise", reportedOn: "2026-07-20", reportedByName: "", complaint: "Hums" } as const;
    const ids = [
      await logCallback(office, { jobId: one, ...said }),
      await logCallback(office, { jobId: other, ...said }),
      await logCallback(office, { jobId: one, ...said }),
    ];
    const idsOf = (answer: { json: { callbacks: { id: string }[] } }) =>
      answer.json.callbacks.map(({ id }) => id);
    const first = await callApi("listCallbacks", own, { query: { limit: "2" } });
    const rest = await callApi("listCallbacks", own, {
      query: { limit: "2", cursor: first.json.nextCursor },
    });
    expect([...idsOf(first), ...idsOf(rest)]).toEqual(ids.toReversed());
    expect(rest.json.nextCursor).toBeNull();
    expect(idsOf(await callApi("listCallbacks", own, { query: { jobId: one, state: "open" } }))).toEqual([
      ids[2],
      ids[0],
    ]);
  });
});

describe("a job's records", () => {
  test("the ledger: units, verdicts, and the basis of each verdict", async () => {
    const { json, status } = await callApi("readLedger", token, ofJob());
    expect(status).toBe(200);
    expect(json.job.id).toBe(job());
    const judged = json.lines.filter((line: { verdict: string | null }) => line.verdict !== null);
    for (const line of judged) expect(line.bases, line.key).not.toEqual([]);
    const sensible = given(json.lines.find(({ key }: { key: string }) => /sensible/i.test(key)));
    // LOAD is what the test's job was designed with.
    expect(JSON.stringify(sensible.cells.designed)).toContain(String(LOAD.sensibleCoolingBtuh));
    expect(sensible.unit).toBe("Btu/h");
  });

  test("findings, of one stage and verdict when asked for", async () => {
    const all = (await callApi("readFindings", token, ofJob())).json.findings;
    const some = (
      await callApi("readFindings", token, {
        ...ofJob(),
        query: { stage: "startup_record", verdict: "not measured" },
      })
    ).json.findings;
    const wanted = all.filter(
      (one: { stage: string; verdict: string }) =>
        one.stage === "startup_record" && one.verdict === "not measured",
    );
    expect(some).toEqual(wanted);
    expect(some.length).toBeGreaterThan(0);
    expect(some.length).toBeLessThan(all.length);
    expect(some[0].basis).toMatchObject({ ruleId: expect.any(String), source: expect.any(String) });
  });

  test("what has not changed is not sent again", async () => {
    const first = await callApi("readLedger", token, ofJob());
    const tag = given(first.headers.get("etag"));
    expect(first.headers.get("cache-control")).toBe("no-store");
    const again = await callApi("readLedger", token, {
      ...ofJob(),
      headers: { "if-none-match": `"x", W/${tag}` },
    });
    expect([again.status, again.text]).toEqual([304, ""]);
    const other = await callApi("readLedger", token, { ...ofJob(), headers: { "if-none-match": '"x"' } });
    expect(other.status).toBe(200);
  });
});

describe("what is wrong is named with its fix, in one shape", () => {
  test.each([
    ["listJobs", { limit: "0" }, "limit"],
    ["listJobs", { limit: "many" }, "limit"],
    ["listJobs", { verdict: "good" }, "verdict"],
    ["listJobs", { page: "2" }, "page"],
    ["listJobs", { cursor: "next" }, "cursor"],
    ["listJobs", { search: "a\0b" }, "search"],
    ["listCallbacks", { state: "done" }, "state"],
    ["listCallbacks", { cursor: "5" }, "cursor"],
  ] as const)("%s %j", async (door, query, field) => {
    const { status, json } = await callApi(door, token, { query });
    expect(status).toBe(422);
    expect(Object.keys(json).toSorted()).toEqual(["code", "details", "fields", "message"]);
    expect(json.fields.map((one: { field: string }) => one.field)).toEqual([field]);
    expect(json.message.length).toBeGreaterThan(20);
  });

  const keyed = () => ({ "idempotency-key": randomUUID() });
  test.each([
    ["no JSON", "{", "body"],
    ["no job", JSON.stringify({ kind: "noise", reportedOn: "2026-07-20", complaint: "Hums" }), "jobId"],
    ["a day that is none", { reportedOn: "2026-02-30" }, "reportedOn"],
    ["a kind that is none", { kind: "ugly" }, "kind"],
    ["nothing said", { complaint: " " }, "complaint"],
    ["more than is known", { severity: 3 }, "severity"],
  ] as const)("a callback with %s", async (_, wrong, field) => {
    const good = { jobId: job(), kind: "noise", reportedOn: "2026-07-20", complaint: "Hums" };
    const body = typeof wrong === "string" ? wrong : JSON.stringify({ ...good, ...wrong });
    const { status, json } = await callApi("addCallback", token, { body, headers: keyed() });
    expect(status).toBe(422);
    expect(json.fields.map((one: { field: string }) => one.field)).toEqual([field]);
  });

  test("a sending without a key of its own", async () => {
    const { status, json } = await callApi("addCallback", token, { body: "{}" });
    expect([status, json.fields[0].field]).toEqual([422, "Idempotency-Key"]);
  });

  test("a log without the logger's name, and an empty one", async () => {
    const asked = { ...ofJob(), headers: keyed() };
    expect((await callApi("sendLog", token, { ...asked, body: "x" })).json.fields[0].field).toBe(
      "sourceName",
    );
    const empty = await callApi("sendLog", token, { ...asked, query: { sourceName: "Hall" } });
    expect(empty.json.fields[0].field).toBe("body");
  });

  test("an address that is none", async () => {
    const answer = await noSuchCall(new Request("http://localhost/api/v1/job"));
    expect([answer.status, (await answer.json()).code]).toEqual([404, "NOT_FOUND"]);
  });

  test("an id that is none is a thing that is not there", async () => {
    const { status, json } = await callApi("readLedger", token, { params: { jobId: "7" } });
    expect([status, json.code]).toEqual([404, "NOT_FOUND"]);
  });
});

describe("a sending is done once a key", () => {
  const body = () =>
    JSON.stringify({ jobId: job(), kind: "musty", reportedOn: "2026-07-21", complaint: "Smells" });
  const count = async () => callbacks(crew.office).count({ jobId: job(), state: null, kind: null });

  test("a callback sent four times at once is one, and the trail names the token", async () => {
    const before = await count();
    const headers = { "idempotency-key": randomUUID() };
    const answers = await Promise.all(
      Array.from({ length: 4 }, () => callApi("addCallback", token, { body: body(), headers })),
    );
    expect(new Set(answers.map(({ status, text }) => `${status} ${text}`)).size).toBe(1);
    expect(answers[0]?.status).toBe(201);
    expect(await count()).toBe(before + 1);
    const [entry] = await activity(crew.owner).list({ jobId: job(), take: 1 });
    expect(entry).toMatchObject({ action: "callback logged", after: { through: "API token “Bookkeeping”" } });
  });

  test("the same key for something else is refused and changes nothing", async () => {
    const headers = { "idempotency-key": randomUUID() };
    await callApi("addCallback", token, { body: body(), headers });
    const before = await count();
    const other = await callApi("addCallback", token, {
      body: body().replace("Smells", "Smells more"),
      headers,
    });
    expect([other.status, other.json.fields[0].field]).toEqual([409, "Idempotency-Key"]);
    expect(await count()).toBe(before);
  });

  test("a refused sending keeps no key: mended, it is taken", async () => {
    const headers = { "idempotency-key": randomUUID() };
    const foreign = JSON.stringify({ ...JSON.parse(body()), jobId: randomUUID() });
    expect((await callApi("addCallback", token, { body: foreign, headers })).status).toBe(404);
    expect((await callApi("addCallback", token, { body: body(), headers })).status).toBe(201);
  });

  test("a log sent twice is read once; how it gets on can be asked", async () => {
    const rows = Array.from(
      { length: 24 },
      (_, hour) => `2026-07-01 ${String(hour).padStart(2, "0")}:00,75,52`,
    );
    const sent = {
      ...ofJob(),
      query: { sourceName: "Hall sensor" },
      headers: { "idempotency-key": randomUUID() },
      body: `Local time,Indoor temperature F,Indoor RH %\n${rows.join("\n")}\n`,
    };
    const first = await callApi("sendLog", token, sent);
    expect(first.status).toBe(202);
    expect((await callApi("sendLog", token, sent)).json).toEqual(first.json);
    const { workId } = first.json;
    const follow = () => callApi("followLog", token, { params: { jobId: job(), workId } });
    expect((await follow()).json).toMatchObject({ state: "waiting", share: 0 });
    const waiting = await workItems(crew.owner).list(["waiting"], { take: 50 });
    expect(waiting.filter(({ task }) => task === "import log")).toHaveLength(1);
    const work = given(await workItems(crew.owner).begin(workId));
    await runLogImport(crew.owner, workId, work.input, async () => undefined);
    expect((await follow()).json).toMatchObject({ state: "done", share: 1 });
  });
});
