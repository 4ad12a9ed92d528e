import type { EquipmentModel } from "@/lib/domain/catalog";
import type { TenantScope } from "@/lib/domain/scope";

/** Who acts and what there is to choose from while one company's jobs are made. */
export type DemoWorld = {
  readonly scopes: Readonly<Record<"owner" | "office" | "tech" | "secondTech", TenantScope>>;
  /** The name each acting person signs with. */
  readonly names: Readonly<Record<"owner" | "office" | "tech" | "secondTech", string>>;
  readonly weatherFileId: string;
  readonly equipment: Readonly<Record<"heldCoil" | "twoStage" | "singleSpeed", EquipmentModel>>;
  readonly controls: Readonly<Record<"twoStage" | "oneStage", string>>;
  readonly instruments: Readonly<
    Record<
      | "psychrometer"
      | "pocketHygrometer"
      | "flowPlate"
      | "oldFlowHood"
      | "manometer"
      | "gauges"
      | "meter"
      | "scale",
      string
    >
  >;
};
export type Actor = keyof DemoWorld["scopes"];
