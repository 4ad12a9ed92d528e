import { Card } from "@/components/ui/card";
import type { ControlModel } from "@/lib/domain/catalog";
import type { FieldDef } from "@/lib/domain/fields";
import type { StageInputs } from "@/lib/domain/stages";
import { controlSetupFields } from "@/lib/domain/stages/control-setup";

type Props = { readonly inputs: StageInputs["control_setup"]; readonly control: ControlModel | null };

/** What a crew sets is in these groups; sensor readings and notes are evidence, not settings. */
const SET_BY_CREW: readonly string[] = ["First and second stage", "Fan and coil", "Board of the equipment"];

/** The settings for the crew, with the maker's own label beside our words. Prints on a page of its own. */
export function ControlCrewCard({ inputs, control }: Props) {
  const rows = Object.entries<FieldDef>(controlSetupFields).flatMap(([key, field]) => {
    const value = inputs[key as keyof typeof inputs];
    const isSetting = key !== "controlModelId" && SET_BY_CREW.includes(field.group);
    const isCorrection = key === "indoorTemperatureCorrectionF" || key === "indoorHumidityCorrectionPct";
    if (field.kind === "text" || value === null || !(isSetting || isCorrection)) return [];
    return [
      { key, label: field.label, maker: control?.data.makerLabels[key] ?? null, value: words(field, value) },
    ];
  });
  if (rows.length === 0) return null;
  return (
    <Card
      title={`Crew card: control settings${control ? ` for ${control.maker} ${control.name}` : ""}`}
      className="crew-card"
      flush
    >
      <table className="ruled-table w-full">
        <caption className="sr-only">Control settings with the maker's labels</caption>
        <thead>
          <tr>
            <th scope="col">Setting</th>
            <th scope="col">Maker's label</th>
            <th scope="col" className="numeric">
              Set to
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row) => (
            <tr key={row.key}>
              <th scope="row">{row.label}</th>
              <td>{row.maker ?? <span className="text-muted">not recorded</span>}</td>
              <td className="numeric font-semibold">{row.value}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </Card>
  );
}

function words(field: FieldDef, value: string | number | boolean): string {
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (field.kind === "choice")
    return field.options.find((one) => one.value === value)?.label ?? String(value);
  return field.kind === "number" ? `${value} ${field.unit}`.trim() : String(value);
}
