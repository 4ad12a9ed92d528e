import type { EquipmentModel } from "@/lib/domain/catalog";
import { fanCurvesPicture } from "@/lib/domain/pictures/duct-curve";
import { DuctCurve } from "../charts/duct-curve";

/** The fan table as curves, without a house's ducts. */
export function FanCurves({ model }: { readonly model: EquipmentModel }) {
  const picture = fanCurvesPicture(model);
  return picture ? <DuctCurve title="Airflow against external static" {...picture} /> : null;
}
