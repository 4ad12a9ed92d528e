import { catalog } from "@/lib/db/catalog";
import { instruments } from "@/lib/db/instruments";
import { withTenant } from "@/lib/db/with-tenant";
import type { ControlModel, EquipmentModel, Instrument } from "@/lib/domain/catalog";
import { asId, isUuid } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { notFound } from "@/lib/errors";

export type CatalogView = {
  readonly equipment: readonly Omit<EquipmentModel, "performance" | "fan">[];
  readonly controls: readonly ControlModel[];
  readonly instruments: readonly (Instrument & { readonly overdue: boolean })[];
};

/** What the company works with. An instrument is overdue when its calibration has ended before today. */
export function catalogView(
  scope: TenantScope,
  today = new Date().toISOString().slice(0, 10),
): Promise<CatalogView> {
  return withTenant(scope, async () => {
    const equipment = await catalog(scope).listEquipment();
    const controls = await catalog(scope).listControls();
    const tools = await instruments(scope).list();
    return {
      equipment,
      controls,
      instruments: tools.map((one) => ({
        ...one,
        overdue: one.calibrationDueOn !== null && one.calibrationDueOn < today,
      })),
    };
  });
}

/** One version of an equipment model with its tables. */
export async function equipmentView(scope: TenantScope, id: string): Promise<EquipmentModel> {
  const model = isUuid(id) ? await catalog(scope).findEquipment(asId<"equipment model">(id)) : null;
  if (!model) throw notFound();
  return model;
}
