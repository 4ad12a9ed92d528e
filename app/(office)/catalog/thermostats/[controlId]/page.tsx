import type { Metadata } from "next";
import { CatalogPress } from "@/components/catalog/catalog-press";
import { ControlForm } from "@/components/catalog/control-form";
import { ModelVersions } from "@/components/catalog/model-versions";
import { PageHeader } from "@/components/shell/page-header";
import { TextLink } from "@/components/ui/button";
import { load, pageScope } from "@/lib/server/page";
import { controlView } from "@/lib/services/catalog";
import { bringThermostatBack, keepThermostat, retireThermostat } from "../../actions";

export const metadata: Metadata = { title: "Thermostat" };

type Props = { readonly params: Promise<{ readonly controlId: string }> };

export default async function ThermostatPage({ params }: Props) {
  const scope = await pageScope("catalog.edit");
  const { controlId } = await params;
  const view = controlId === "new" ? null : await load(controlView(scope, controlId));
  if (view === null) {
    return (
      <>
        <PageHeader title="New thermostat" crumbs={CRUMBS} lead={LEAD} />
        <ControlForm control={null} send={keepThermostat} />
      </>
    );
  }
  const { control, versions } = view;
  const shown = versions.find(({ id }) => id === control.id);
  const newest = versions.find(({ retired }) => !retired);
  return (
    <>
      <PageHeader title={`${control.maker} ${control.name}`} crumbs={CRUMBS} lead={LEAD} />
      <div className="grid grid-cols-[minmax(0,1fr)] gap-8">
        {newest === undefined ? (
          <div className="grid justify-start gap-2">
            <p>
              This thermostat is retired: it cannot be chosen for a new job. Jobs that rest on it keep it.
            </p>
            <CatalogPress input={{ controlId }} send={bringThermostatBack}>
              Bring this thermostat back
            </CatalogPress>
          </div>
        ) : newest.id === control.id ? (
          <div className="grid gap-6">
            <ControlForm control={control} send={keepThermostat} />
            <div className="flex flex-wrap gap-3">
              <CatalogPress input={{ controlId }} send={retireThermostat} to="/catalog" variant="danger">
                Retire this thermostat
              </CatalogPress>
            </div>
          </div>
        ) : (
          <p>
            This is version {shown?.version}, kept for the jobs that rest on it.{" "}
            <TextLink href={`/catalog/thermostats/${newest.id}`}>
              See version {newest.version}, the newest
            </TextLink>
          </p>
        )}
        <ModelVersions versions={versions} shown={control.id} at={AT} />
      </div>
    </>
  );
}

const CRUMBS = [{ href: "/catalog", label: "Catalog" }];
const LEAD = "Our words for each setting, the maker's beside them.";
const AT = { catalog: "/catalog/thermostats", record: "control-setup" };
