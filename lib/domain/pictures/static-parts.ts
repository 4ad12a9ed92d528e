import type { JobContext } from "../evaluate";

const PARTS = [
  ["returnDropInWc", "Return ducts"],
  ["filterDropInWc", "Filter, clean"],
  ["coilDropInWc", "Wet coil"],
  ["otherDropInWc", "Other"],
  ["supplyDropInWc", "Supply ducts"],
] as const;

/** The pressure drops entered, in the air's order, against the maker's maximum; `null` before one is entered. */
export function staticPartsPicture({ inputs, model }: JobContext) {
  const parts = PARTS.flatMap(([key, label]) => {
    const dropInWc = inputs.airflow_setup[key];
    return dropInWc === null ? [] : [{ key, label, dropInWc, measured: false }];
  });
  const most = model?.data.limits.maxExternalStaticInWc ?? null;
  return parts.length === 0
    ? null
    : { parts, limit: most === null ? null : { label: "maker's maximum", inWc: most } };
}
