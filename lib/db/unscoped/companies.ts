import { asId, type TenantId, type UserId } from "@/lib/domain/ids";
import { unscopedTransaction } from "./transaction";

/** Every open company, and the owner in whose name its own background work is done. */
export function unscopedOpenCompanies(
  only: { readonly tenantId?: string } = {},
): Promise<readonly { readonly tenantId: TenantId; readonly ownerId: UserId }[]> {
  return unscopedTransaction(async (tx) => {
    const rows = await tx.membership.findMany({
      where: {
        ...(only.tenantId === undefined ? {} : { tenantId: only.tenantId }),
        role: "owner",
        removedAt: null,
        tenant: { closedAt: null },
      },
      orderBy: [{ tenantId: "asc" }, { userId: "asc" }],
      distinct: ["tenantId"],
      select: { tenantId: true, userId: true },
    });
    return rows.map((row) => ({ tenantId: asId<"tenant">(row.tenantId), ownerId: asId<"user">(row.userId) }));
  });
}
