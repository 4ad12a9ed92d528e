import { Card } from "@/components/ui/card";
import { controlSetupFields } from "@/lib/domain/stages/control-setup";
import type { FieldJob } from "@/lib/offline/bundle";

type Setting = { readonly label: string; readonly maker: string | null; readonly value: string | null };

/** The settings to make, as design wants them, with what the maker prints beside each. */
export function CrewCard({ job }: { readonly job: FieldJob }) {
  return (
    <Card title="Settings to make">
      <dl className="grid grid-cols-[minmax(0,3fr)_minmax(0,2fr)] gap-x-4 gap-y-2">
        {settingsOf(job).map(({ label, maker, value }) => (
          <div key={label} className="contents">
            <dt>
              {label}
              {maker === null ? null : (
                <span className="block text-xs text-muted">on the control: {maker}</span>
              )}
            </dt>
            <dd className="text-right font-semibold">{value ?? "not decided"}</dd>
          </div>
        ))}
      </dl>
    </Card>
  );
}

function settingsOf({ context, makerLabels }: FieldJob): readonly Setting[] {
  const { equipment_selection: selection, airflow_setup: airflow, control_setup: controls } = context.inputs;
  const plain = (label: string, value: string | null): Setting => ({ label, maker: null, value });
  return [
    plain("Equipment", context.model ? `${context.model.maker} ${context.model.name}` : null),
    plain("Capacity setting", selection.capacitySetting),
    plain("Airflow setting, full capacity", airflow.secondStageAirflowSetting),
    plain("Airflow setting, first stage", airflow.firstStageAirflowSetting),
    ...Object.entries(controlSetupFields).flatMap(([key, field]) => {
      const value = controls[key as keyof typeof controls];
      const isAsked = "neededToSign" in field && field.neededToSign === true;
      const isSetting =
        field.kind !== "text" &&
        field.kind !== "reference" &&
        !/Reads|Temperature(F)$|HumidityPct$/.test(key);
      if (!isSetting || (!isAsked && value === null)) return [];
      const unit = "unit" in field ? field.unit : "";
      return [{ label: field.label, maker: makerLabels[key] ?? null, value: settingWords(value, unit) }];
    }),
  ];
}

/** A setting as a person says it. */
export function settingWords(value: string | number | boolean | null, unit: string): string | null {
  if (value === null) return null;
  if (typeof value === "boolean") return value ? "yes" : "no";
  return `${value} ${unit}`.trim();
}
