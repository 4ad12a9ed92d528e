/**
 * Saves customers with their trail, one after another, and prints the id of each save that was
 * acknowledged. A failed save is printed as a failure and the next one is tried.
 */
import { randomUUID } from "node:crypto";
import { withTenant } from "@/lib/db/with-tenant";
import type { TenantScope } from "@/lib/domain/scope";

const [tenantId = "", userId = ""] = process.argv.slice(2);
const scope = { tenantId, userId, role: "office", membershipVersion: 1 } as unknown as TenantScope;

for (;;) {
  const id = randomUUID();
  try {
    await withTenant(scope, async (tx) => {
      await tx.customer.create({ data: { tenantId, id, name: id, createdBy: userId, updatedBy: userId } });
      await tx.activity.create({
        data: { tenantId, actorId: userId, action: "customer created", entity: "customer", entityId: id },
      });
    });
    process.stdout.write(`saved ${id}\n`);
  } catch {
    process.stdout.write(`failed ${id}\n`);
    await new Promise((resolve) => setTimeout(resolve, 50));
  }
}
