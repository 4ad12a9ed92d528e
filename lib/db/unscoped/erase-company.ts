import type { TenantScope } from "@/lib/domain/scope";
import { Prisma } from "../generated/client";
import { runTransaction } from "../transaction";

const LONGEST_MS = 30 * 60_000;

/** What is left to do once a company is gone: work of the queue that belongs to no company any more. */
export const AFTER_ERASURE = "after_erasure";

/** To whom it is told that their company is gone. */
export type Farewell = { readonly to: string; readonly subject: string; readonly text: string };

type Link = { readonly child: string; readonly parent: string };

/**
 * Removes every row of a company: its records, trail, people and waiting work, and the accounts of
 * people who belong to no other company. Its files and the mails that tell it come after: the queue holds both from the
 * same moment, because a server that stops here would leave the files for ever and tell nobody.
 */
export async function unscopedEraseCompany(
  scope: TenantScope,
  farewells: readonly Farewell[] = [],
): Promise<void> {
  await runTransaction(
    async (tx) => {
      const members = await onlyHere(tx, scope);
      await tx.$queryRaw`SELECT set_config('role', 'app_eraser', true), set_config('app.tenant', ${scope.tenantId}, true)`;
      for (const table of await childrenFirst(tx)) {
        await tx.$executeRaw`DELETE FROM ${Prisma.raw(`"${table}"`)} WHERE tenant_id = ${scope.tenantId}::uuid`;
      }
      await tx.$executeRaw`DELETE FROM tenant WHERE id = ${scope.tenantId}::uuid`;
      // Accounts and the queue belong to no company: the tables' owner removes them.
      await tx.$queryRaw`SELECT set_config('role', 'none', true)`;
      await tx.passwordReset.deleteMany({ where: { userId: { in: members } } });
      await tx.user.deleteMany({ where: { id: { in: members } } });
      await tx.$executeRaw`DELETE FROM graphile_worker._private_jobs WHERE payload->>'tenantId' = ${scope.tenantId}`;
      await tx.$executeRaw`DELETE FROM graphile_worker._private_job_queues
        WHERE starts_with(queue_name, ${`${scope.tenantId}:`})`;
      for (const mail of farewells)
        await tx.$queryRaw`SELECT 1 FROM graphile_worker.add_job(${AFTER_ERASURE}, ${JSON.stringify({ mail })}::json)`;
      // Later, so that what was still being written when the company went is taken as well.
      await tx.$queryRaw`SELECT 1 FROM graphile_worker.add_job(${AFTER_ERASURE},
        ${JSON.stringify({ filesOf: scope.tenantId })}::json, run_at => now() + interval '10 minutes')`;
    },
    { timeoutMs: LONGEST_MS },
  );
}

/** The members who belong to no other company. */
async function onlyHere(tx: Prisma.TransactionClient, scope: TenantScope): Promise<string[]> {
  await tx.$queryRaw`SELECT set_config('role', 'app_unscoped', true)`;
  const here = await tx.membership.findMany({
    where: { tenantId: scope.tenantId },
    select: { userId: true },
  });
  const ids = here.map((row) => row.userId);
  const elsewhere = await tx.membership.findMany({
    where: { userId: { in: ids }, tenantId: { not: scope.tenantId } },
    select: { userId: true },
  });
  const kept = new Set(elsewhere.map((row) => row.userId));
  return ids.filter((id) => !kept.has(id));
}

/** All tables of companies, each before those it points to, as the database itself describes them. */
async function childrenFirst(tx: Prisma.TransactionClient): Promise<readonly string[]> {
  const tables = await tx.$queryRaw<{ name: string }[]>`
    SELECT c.relname::text AS name FROM pg_class c JOIN pg_attribute a ON a.attrelid = c.oid
    WHERE c.relnamespace = 'public'::regnamespace AND c.relkind IN ('r', 'p')
      AND a.attname = 'tenant_id' AND NOT a.attisdropped ORDER BY c.relname`;
  // A link that cascades sets no order: its child goes with the parent.
  const links = await tx.$queryRaw<Link[]>`
    SELECT DISTINCT child.relname::text AS child, parent.relname::text AS parent
    FROM pg_constraint k JOIN pg_class child ON child.oid = k.conrelid JOIN pg_class parent ON parent.oid = k.confrelid
    WHERE k.contype = 'f' AND k.confdeltype <> 'c' AND child.oid <> parent.oid
      AND child.relnamespace = 'public'::regnamespace`;
  const left = new Set(tables.map((table) => table.name));
  const order: string[] = [];
  while (left.size > 0) {
    const free = [...left].filter(
      (name) => !links.some((link) => link.parent === name && left.has(link.child)),
    );
    if (free.length === 0)
      throw new Error(`These tables point to each other in a circle: ${[...left].join(", ")}`);
    for (const name of free) left.delete(name);
    order.push(...free);
  }
  return order;
}
