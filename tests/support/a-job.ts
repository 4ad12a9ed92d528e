import type { TenantTransaction } from "@/lib/db/with-tenant";
import type { TenantScope } from "@/lib/domain/scope";

/** A job with its customer and home, as small as the database allows. */
export async function addJob(tx: TenantTransaction, scope: TenantScope, customerName = "Ann Ember") {
  const own = { tenantId: scope.tenantId, createdBy: scope.userId, updatedBy: scope.userId };
  const customer = await tx.customer.create({ data: { ...own, name: customerName } });
  const home = await tx.home.create({
    data: {
      ...own,
      customerId: customer.id,
      addressLine: "12 Elm_Way",
      city: "Bay",
      region: "TX",
      postalCode: "77001",
    },
  });
  return tx.job.create({ data: { ...own, customerId: customer.id, homeId: home.id } });
}
