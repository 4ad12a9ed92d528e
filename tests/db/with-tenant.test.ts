import { setTimeout as pause } from "node:timers/promises";
import { afterAll, expect, test } from "vitest";
import { closeDatabase, database } from "@/lib/db/client";
import { unscopedTransaction } from "@/lib/db/unscoped/transaction";
import { withTenant } from "@/lib/db/with-tenant";
import { addJob } from "../support/a-job";
import { makeCompany } from "../support/companies";

afterAll(closeDatabase);

const roleAndCompany = "SELECT current_user::text AS role, current_setting('app.tenant', true) AS company";

test("role and company last for the transaction and no longer", async () => {
  const scope = await makeCompany();
  const inside = await withTenant(scope, (tx) => tx.$queryRawUnsafe(roleAndCompany));
  expect(inside).toEqual([{ role: "app_user", company: scope.tenantId }]);
  const after = await Promise.all(
    Array.from({ length: 25 }, () => database().$queryRawUnsafe(roleAndCompany)),
  );
  for (const rows of after)
    expect(rows).toEqual([{ role: "dewledger", company: expect.toBeOneOf([null, ""]) }]);
});

test("many companies at once never see each other's rows", async () => {
  const scopes = await Promise.all(Array.from({ length: 8 }, () => makeCompany()));
  for (const scope of scopes) await withTenant(scope, (tx) => addJob(tx, scope, scope.tenantId));
  const seen = await Promise.all(
    Array.from({ length: 200 }, (_, n) => {
      const scope = scopes[n % scopes.length] ?? scopes[0];
      if (!scope) throw new Error("No company was made.");
      return withTenant(scope, async (tx) =>
        (await tx.customer.findMany()).every((row) => row.name === scope.tenantId),
      );
    }),
  );
  expect(seen.every(Boolean)).toBe(true);
});

test("a call inside another joins it: all is kept or nothing", async () => {
  const scope = await makeCompany();
  const failed = withTenant(scope, async () => {
    await withTenant(scope, (tx) => addJob(tx, scope));
    throw new Error("after all");
  });
  await expect(failed).rejects.toThrow("after all");
  expect(await withTenant(scope, (tx) => tx.job.count())).toBe(0);
});

test("a transaction of one company does no work for another", async () => {
  const [one, other] = [await makeCompany(), await makeCompany()];
  const mixed = withTenant(one, () => withTenant(other, (tx) => tx.job.count()));
  await expect(mixed).rejects.toThrow("one company");
});

test("concurrent transactions that PostgreSQL cannot put in order are run again", async () => {
  const scope = await makeCompany();
  const rename = () =>
    withTenant(
      scope,
      async (tx) => {
        const before = await tx.tenant.findFirstOrThrow();
        await tx.tenant.updateMany({ where: { id: scope.tenantId }, data: { name: `${before.name}+` } });
      },
      { isolation: "Serializable" },
    );
  const start = await withTenant(scope, (tx) => tx.tenant.findFirstOrThrow());
  await Promise.all([rename(), rename(), rename()]);
  const end = await withTenant(scope, (tx) => tx.tenant.findFirstOrThrow());
  expect(end.name).toBe(`${start.name}+++`);
});

test("before a company is known, people are found but no jobs", async () => {
  const scope = await makeCompany();
  await withTenant(scope, (tx) => addJob(tx, scope));
  const member = await unscopedTransaction((tx) =>
    tx.membership.findFirst({ where: { userId: scope.userId } }),
  );
  expect(member?.tenantId).toBe(scope.tenantId);
  await expect(unscopedTransaction((tx) => tx.job.count())).rejects.toThrow("permission denied");
});

test("who waits too long for a connection is told to come again", async () => {
  const scope = await makeCompany();
  const sleep = () => withTenant(scope, (tx) => tx.$queryRawUnsafe("SELECT pg_sleep(11)::text"));
  const busy = Array.from({ length: 20 }, sleep);
  await pause(200);
  await expect(withTenant(scope, (tx) => tx.job.count())).rejects.toMatchObject({ code: "UNAVAILABLE" });
  await Promise.all(busy);
  expect(await withTenant(scope, (tx) => tx.job.count())).toBe(0);
});

test("a transaction that takes too long leaves nothing and may be tried again", async () => {
  const scope = await makeCompany();
  const slow = withTenant(
    scope,
    async (tx) => {
      await addJob(tx, scope);
      await pause(400);
      await tx.job.count();
    },
    { timeoutMs: 200 },
  );
  await expect(slow).rejects.toMatchObject({ code: "UNAVAILABLE" });
  expect(await withTenant(scope, (tx) => tx.job.count())).toBe(0);
});
