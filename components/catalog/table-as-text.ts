import type { EquipmentModel } from "@/lib/domain/catalog";
import type { TableKind } from "@/lib/schemas/catalog-table";

const PERFORMANCE = [
  ["Capacity setting", "capacitySetting"],
  ["Mode", "mode"],
  ["Outdoor dry bulb °F", "outdoorDbF"],
  ["Entering wet bulb °F", "enteringWbF"],
  ["Entering dry bulb °F", "enteringDbF"],
  ["Airflow cfm", "airflowCfm"],
  ["Total Btu/h", "totalBtuh"],
  ["Sensible Btu/h", "sensibleBtuh"],
  ["Power W", "powerW"],
] as const;
const FAN = [
  ["Airflow setting", "airflowSetting"],
  ["External static in. w.c.", "externalStaticInWc"],
  ["Airflow cfm", "airflowCfm"],
  ["Power W", "powerW"],
] as const;

/** A model's table as a block that can be edited and read again, or copied to a spreadsheet. */
export function tableAsText(kind: TableKind, model: EquipmentModel): string {
  const lines =
    kind === "performance"
      ? model.performance.map((row) => PERFORMANCE.map(([, key]) => row[key] ?? ""))
      : model.fan.map((row) => FAN.map(([, key]) => row[key] ?? ""));
  const heads = (kind === "performance" ? PERFORMANCE : FAN).map(([head]) => head);
  return lines.length === 0 ? "" : [heads, ...lines].map((cells) => cells.join("\t")).join("\n");
}
