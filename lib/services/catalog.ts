import { catalog } from "@/lib/db/catalog";
import { type CatalogVersion, catalogVersions } from "@/lib/db/catalog-versions";
import { type Calibration, instruments, type KeptInstrument } from "@/lib/db/instruments";
import { type Retired, retiredOf } from "@/lib/db/retired";
import { withTenant } from "@/lib/db/with-tenant";
import type { ControlModel, EquipmentModel, Instrument } from "@/lib/domain/catalog";
import { asId, isUuid } from "@/lib/domain/ids";
import { may } from "@/lib/domain/roles";
import type { TenantScope } from "@/lib/domain/scope";
import { notFound } from "@/lib/errors";
import { companyToday } from "./company-today";

export type CatalogView = {
  readonly equipment: readonly Omit<EquipmentModel, "performance" | "fan">[];
  readonly controls: readonly ControlModel[];
  /** `due`: how its calibration stands today, in words. */
  readonly instruments: readonly (Instrument & { readonly overdue: boolean; readonly due: string })[];
  readonly mayEdit: boolean;
};

/** What the company works with, as far as the search fits; nothing is left out silently. An instrument is overdue when its calibration has ended before today. */
export function catalogView(scope: TenantScope, search = "", now = new Date()): Promise<CatalogView> {
  const words = search
    .toLowerCase()
    .split(/\s+/)
    .filter((word) => word !== "");
  const fits = (...texts: readonly string[]) => {
    const text = texts.join(" ").toLowerCase();
    return words.every((word) => text.includes(word));
  };
  return withTenant(scope, async () => {
    const today = await companyToday(scope, now);
    const equipment = await catalog(scope).listEquipment();
    const controls = await catalog(scope).listControls();
    const tools = await instruments(scope).list();
    return {
      equipment: equipment.filter((one) => fits(one.maker, one.name, one.modelNumber, one.refrigerant)),
      controls: controls.filter((one) => fits(one.maker, one.name)),
      instruments: tools
        .filter((one) => fits(one.name, one.kind, one.serialNumber))
        .map((one) => ({
          ...one,
          due: dueWords(one.calibrationDueOn, today),
          overdue: one.calibrationDueOn !== null && one.calibrationDueOn < today,
        })),
      mayEdit: may(scope.role, "catalog.edit"),
    };
  });
}

/** One version of an equipment model with its tables. */
export async function equipmentView(scope: TenantScope, id: string): Promise<EquipmentModel> {
  const model = isUuid(id) ? await catalog(scope).findEquipment(asId<"equipment model">(id)) : null;
  if (!model) throw notFound();
  return model;
}

export type ModelView = {
  readonly model: EquipmentModel;
  readonly versions: readonly CatalogVersion[];
  readonly mayEdit: boolean;
};

/** One version with the others of its family and the jobs that rest on them; those only for who may see every job. */
export function modelView(scope: TenantScope, id: string): Promise<ModelView> {
  return withTenant(scope, async () => {
    const model = await equipmentView(scope, id);
    const mayEdit = may(scope.role, "catalog.edit");
    return {
      model,
      versions: mayEdit ? await catalogVersions(scope, "equipment").list(model.id) : [],
      mayEdit,
    };
  });
}

export type ControlView = {
  readonly control: ControlModel;
  readonly versions: readonly CatalogVersion[];
};

/** One version of a thermostat with the others and the jobs that rest on them. */
export function controlView(scope: TenantScope, id: string): Promise<ControlView> {
  return withTenant(scope, async () => {
    const control = isUuid(id) ? await catalog(scope).findControl(asId<"control model">(id)) : null;
    if (!control) throw notFound();
    return { control, versions: await catalogVersions(scope, "thermostat").list(control.id) };
  });
}

/** What is off the lists of the catalog and can be brought back. */
export const retiredView = (scope: TenantScope): Promise<readonly Retired[]> => retiredOf(scope);

export async function instrumentView(scope: TenantScope, id: string): Promise<KeptInstrument> {
  const tool = isUuid(id) ? await instruments(scope).find(asId<"instrument">(id)) : null;
  if (!tool) throw notFound();
  return tool;
}

/** The calibrations of an instrument since it came into the catalog, the newest first. */
export async function calibrationHistory(scope: TenantScope, id: string): Promise<readonly Calibration[]> {
  return instruments(scope).calibrations((await instrumentView(scope, id)).id);
}

/** How a calibration stands on a day. */
function dueWords(due: string | null, today: string): string {
  if (due === null) return "due day not recorded";
  const days = Math.round((Date.parse(due) - Date.parse(today)) / 86_400_000);
  if (days < 0) return `overdue since ${due}`;
  if (days === 0) return "due today";
  return days <= 60 ? `due in ${days} ${days === 1 ? "day" : "days"}, on ${due}` : `due on ${due}`;
}
