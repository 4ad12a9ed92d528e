import { Card } from "@/components/ui/card";
import type { JobContext } from "@/lib/domain/evaluate";
import { controlSetupFields } from "@/lib/domain/stages/control-setup";

/** The settings to make, as design wants them. */
export function CrewSettings({ context }: { readonly context: JobContext }) {
  const { equipment_selection: selection, airflow_setup: airflow, control_setup: controls } = context.inputs;
  const settings: readonly (readonly [string, string | null])[] = [
    ["Equipment", context.model ? `${context.model.maker} ${context.model.name}` : null],
    ["Capacity setting", selection.capacitySetting],
    ["Airflow setting, full capacity", airflow.secondStageAirflowSetting],
    ["Airflow setting, first stage", airflow.firstStageAirflowSetting],
    ...Object.entries(controlSetupFields)
      .filter(([, field]) => "neededToSign" in field && field.neededToSign === true)
      .map(
        ([key, field]) =>
          [
            field.label,
            words(controls[key as keyof typeof controls], "unit" in field ? field.unit : ""),
          ] as const,
      ),
  ];
  return (
    <Card title="Settings to make">
      <dl className="grid grid-cols-[1fr_auto] gap-x-4 gap-y-1.5">
        {settings.map(([label, value]) => (
          <div key={label} className="contents">
            <dt className="text-muted">{label}</dt>
            <dd className="text-right font-semibold">{value ?? "not decided"}</dd>
          </div>
        ))}
      </dl>
    </Card>
  );
}

function words(value: string | number | boolean | null, unit: string): string | null {
  if (value === null) return null;
  if (typeof value === "boolean") return value ? "yes" : "no";
  return `${value} ${unit}`.trim();
}
