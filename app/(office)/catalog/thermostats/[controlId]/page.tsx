import type { Metadata } from "next";
import { ControlForm } from "@/components/catalog/control-form";
import { Press } from "@/components/catalog/press";
import { PageHeader } from "@/components/shell/page-header";
import { load, pageScope } from "@/lib/server/page";
import { controlView } from "@/lib/services/catalog";
import { keepThermostat, retireThermostat } from "../../actions";

export const metadata: Metadata = { title: "Thermostat" };

type Props = { readonly params: Promise<{ readonly controlId: string }> };

export default async function ThermostatPage({ params }: Props) {
  const scope = await pageScope("catalog.edit");
  const { controlId } = await params;
  const control = controlId === "new" ? null : await load(controlView(scope, controlId));
  return (
    <>
      <PageHeader
        title={control ? `${control.maker} ${control.name}` : "New thermostat"}
        crumbs={[{ href: "/catalog", label: "Catalog" }]}
        lead="Our words for each setting, the maker's beside them."
      />
      <ControlForm control={control} send={keepThermostat} />
      {control ? (
        <div className="mt-6 flex flex-wrap gap-3">
          <Press input={{ controlId: control.id }} send={retireThermostat} to="/catalog" variant="danger">
            Retire this thermostat
          </Press>
        </div>
      ) : null}
    </>
  );
}
