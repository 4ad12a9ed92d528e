import { afterEach, expect, test, vi } from "vitest";
import { company } from "@/lib/db/company";
import { jobs } from "@/lib/db/jobs";
import { members } from "@/lib/db/members";
import { openRoll } from "@/lib/db/unscoped/dead-workers";
import { workItems } from "@/lib/db/work-items";
import type { TenantScope } from "@/lib/domain/scope";
import type { WorkTask } from "@/lib/domain/work";
import { AppError } from "@/lib/errors";
import { judgingNow, queueJudgingAfterRelease } from "@/lib/services/judge-again";
import { changeLimit } from "@/lib/services/rules";
import { TASKS, type TaskDefinition } from "@/lib/work/tasks";
import { startWorker, type Worker } from "@/lib/work/worker";
import { connect, inRole } from "../support/connect";
import { runScript, until } from "../support/own-server";
import { given, makeCrew } from "../support/people";
import { LOAD, openJob, save } from "../support/service-jobs";

// What fails here fails on purpose.
process.env.LOG_LEVEL = "silent";
let worker: Worker | null = null;
afterEach(async () => {
  await worker?.stop();
  worker = null;
});

/** Names outside the product's own tasks. */
const add = (scope: TenantScope, task: string, key?: string) =>
  workItems(scope).add({
    task: task as WorkTask,
    title: task,
    input: { asked: true },
    ...(key ? { key } : {}),
  });

const tasks = (name: string, run: TaskDefinition["run"], actsFor: TaskDefinition["actsFor"] = "asker") =>
  new Map([[name, { actsFor, run }]]);

const all = (scope: TenantScope) =>
  workItems(scope).list(["waiting", "running", "failed", "done"], { take: 50 });

async function stateOf(scope: TenantScope): Promise<string | undefined> {
  return (await all(scope))[0]?.state;
}

test("work runs in its company, with the rights of the person who asked, and says what came of it", async () => {
  const { office, owner } = await makeCrew();
  await add(office, "test.once");
  const seen: unknown[] = [];
  worker = startWorker(
    tasks("test.once", async (scope, input, _progress, report) => {
      seen.push([scope.tenantId, scope.userId, scope.role, input]);
      await report({ done: 2, total: 2, progress: null });
      return "Both done.";
    }),
  );
  await until(async () => (await stateOf(owner)) === "done", "the work is done");
  expect(seen).toEqual([[office.tenantId, office.userId, "office", { asked: true }]]);
  expect((await all(owner))[0]).toMatchObject({ result: "Both done.", done: 2, total: 2, attempt: 1 });
});

test("work that takes long is not taken for that of a dead process, neither here nor by another server", async () => {
  const { owner } = await makeCrew();
  await add(owner, "test.long");
  let runs = 0;
  let end = (): void => undefined;
  worker = startWorker(
    tasks("test.long", async () => {
      runs += 1;
      await new Promise<void>((resolve) => {
        end = resolve;
      });
      return "At last.";
    }),
  );
  await until(async () => runs === 1, "the work runs");
  const elsewhere = await openRoll();
  try {
    expect(await elsewhere.release(0)).toBe(0);
  } finally {
    await elsewhere.close();
  }
  end();
  await until(async () => (await stateOf(owner)) === "done", "the work is done");
  expect((await all(owner))[0]).toMatchObject({ result: "At last.", attempt: 1 });
  expect(runs).toBe(1);
});

test("a try that fails is tried again, and until then says why", async () => {
  const { owner } = await makeCrew();
  await add(owner, "test.flaky");
  let tries = 0;
  worker = startWorker(
    tasks("test.flaky", async () => {
      tries += 1;
      if (tries === 1) throw new AppError("UNAVAILABLE", "The mail server does not answer.");
      return "Sent.";
    }),
  );
  await until(async () => (await all(owner))[0]?.problem !== "", "the first try has failed");
  expect((await all(owner))[0]).toMatchObject({ problem: "The mail server does not answer.", attempt: 1 });
  expect(given((await all(owner))[0]).nextTryAt).not.toBeNull();
  await until(async () => (await stateOf(owner)) === "done", "the second try has succeeded");
  expect((await all(owner))[0]).toMatchObject({ problem: "", result: "Sent.", attempt: 2 });
});

test("an unknown failure shows an error's number and nothing of its text", async () => {
  const { owner } = await makeCrew();
  await add(owner, "test.secret");
  worker = startWorker(
    tasks("test.secret", async () => {
      throw new Error("password of the database");
    }),
  );
  await until(async () => (await all(owner))[0]?.problem !== "", "the try has failed");
  const [item] = await all(owner);
  expect(item?.problem).toMatch(/^Something went wrong on our side/);
  expect(item?.problem).not.toContain("password");
});

test("what a removed person asked for is not done", async () => {
  const { owner, office } = await makeCrew();
  await add(office, "test.removed");
  await members(owner).remove(office.userId);
  const run = vi.fn(async () => "Done.");
  worker = startWorker(tasks("test.removed", run));
  await until(async () => (await stateOf(owner)) === "failed", "the work is refused");
  expect(run).not.toHaveBeenCalled();
  expect((await all(owner))[0]?.problem).toBe("Who asked for this is no member of the company any more.");
});

test("failed work can be put back; another company's cannot", async () => {
  const { owner } = await makeCrew();
  const other = await makeCrew();
  const id = await add(owner, "test.again");
  await workItems(owner).begin(id);
  await workItems(owner).fail(id, "No.", null);
  await expect(workItems(other.owner).retry(id)).rejects.toThrow("There is nothing here");
  await workItems(owner).retry(id);
  await expect(workItems(owner).retry(id)).rejects.toThrow("not failed any more");
  worker = startWorker(tasks("test.again", async () => "Now."));
  await until(async () => (await stateOf(owner)) === "done", "the work is done");
});

test("work that waits is not added twice", async () => {
  const { owner } = await makeCrew();
  const first = await add(owner, "test.same", "one");
  expect(await add(owner, "test.same", "one")).toBe(first);
  expect(await add(owner, "test.same", "two")).not.toBe(first);
  await workItems(owner).begin(first);
  // What runs may be past the change that asks again.
  expect(await add(owner, "test.same", "one")).not.toBe(first);
});

test("killed in the middle, work goes on where it was, in another process", async () => {
  const { owner } = await makeCrew();
  await add(owner, "test.count");
  const first = runScript("work-until-killed.ts", [], { LOG_LEVEL: "silent" });
  await first.said(2);
  first.signal("SIGKILL");
  await first.ended;
  expect(await stateOf(owner)).toBe("running");
  const second = runScript("work-until-killed.ts", [], { LOG_LEVEL: "silent" });
  try {
    await until(async () => (await stateOf(owner)) === "done", "the work is done", 40_000);
  } finally {
    second.signal("SIGKILL");
    await second.ended;
  }
  // What was reported before the kill is not done again; the step that was cut off may be.
  const again = Number(second.lines[0]);
  expect(again).toBeGreaterThanOrEqual(Number(first.lines.at(-1)));
  expect(again).toBeGreaterThan(1);
  expect(second.lines.at(-1)).toBe("5");
  expect((await all(owner))[0]).toMatchObject({ attempt: 2, result: "Counted to five." });
}, 60_000);

test("a changed limit brings the verdicts of all jobs up to date, and nobody's name onto them", async () => {
  const { owner, office } = await makeCrew();
  const jobId = await openJob(office);
  // 75 °F and 50 % indoors as the seed limits want them.
  await save(office, jobId, "load_summary", LOAD);
  const before = given(await jobs(owner).find(jobId));
  const stored = async () => {
    const client = await connect();
    try {
      return await inRole(client, "app_user", owner, async () => {
        const { rows } = await client.query(
          "SELECT j.verdict, j.updated_at, j.updated_by, f.verdict AS fact FROM job j JOIN job_fact f ON f.job_id = j.id AND f.tenant_id = j.tenant_id",
        );
        return rows[0];
      });
    } finally {
      await client.end();
    }
  };
  const first = await stored();
  await changeLimit(owner, { key: "load.indoorCoolingDb", value: "78", reason: "We design warmer" });
  expect((await all(owner))[0]?.title).toBe("Judge all jobs again: a company limit has changed");
  // Until then the jobs table says that its verdicts are older.
  expect(await judgingNow(office)).toBe("Verdicts are being brought up to the limits in force.");
  expect((await stored()).verdict).toBe(first.verdict);
  worker = startWorker(TASKS);
  await until(async () => (await stateOf(owner)) === "done", "the jobs are judged");
  const after = await stored();
  expect(before.verdict).not.toBe("falls short");
  expect(after).toMatchObject({ verdict: "falls short", fact: "falls short", updated_by: office.userId });
  expect(after.updated_at).toEqual(first.updated_at);
  expect((await all(owner))[0]).toMatchObject({
    result: "1 job judged, 1 verdict changed.",
    done: 1,
    total: 1,
  });
  expect(await judgingNow(office)).toBeNull();
  expect(await company(owner).limitOverrides()).toEqual({ "load.indoorCoolingDb": 78 });
});

test("jobs that an earlier release judged are judged again, once", async () => {
  const { owner, office } = await makeCrew();
  const jobId = await openJob(office);
  await save(office, jobId, "load_summary", LOAD);
  await queueJudgingAfterRelease(owner);
  expect(await all(owner)).toEqual([]);
  const client = await connect();
  await inRole(client, "app_user", owner, () => client.query("UPDATE job_fact SET engine_version = 'older'"));
  await client.end();
  await queueJudgingAfterRelease(owner);
  await queueJudgingAfterRelease(owner);
  expect((await all(owner)).map((one) => one.title)).toEqual([
    "Judge all jobs again: the product's rules have changed",
  ]);
  worker = startWorker(TASKS);
  await until(async () => (await stateOf(owner)) === "done", "the jobs are judged");
  await queueJudgingAfterRelease(owner);
  expect((await all(owner)).length).toBe(1);
});
