import type { Metadata } from "next";
import { FanCurves } from "@/components/catalog/fan-curves";
import { ModelActions } from "@/components/catalog/model-actions";
import { ModelFacts } from "@/components/catalog/model-facts";
import { FanTable, PerformanceTable } from "@/components/catalog/model-tables";
import { ModelVersions } from "@/components/catalog/model-versions";
import { PageHeader } from "@/components/shell/page-header";
import { Badge } from "@/components/ui/badge";
import { COMPRESSOR_KIND_NAMES } from "@/lib/domain/catalog";
import { load, pageScope } from "@/lib/server/page";
import { modelView } from "@/lib/services/catalog";
import { bringModelBack, copyEquipment, retireModel } from "../actions";

export const metadata: Metadata = { title: "Equipment" };

type Props = { readonly params: Promise<{ readonly modelId: string }> };

export default async function EquipmentPage({ params }: Props) {
  const scope = await pageScope("catalog.read");
  const { model, versions, mayEdit } = await load(modelView(scope, (await params).modelId));
  return (
    <>
      <PageHeader
        title={`${model.maker} ${model.name}`}
        crumbs={[{ href: "/catalog", label: "Catalog" }]}
        lead={`${model.nominalTons} tons, ${COMPRESSOR_KIND_NAMES[model.compressorKind]}, ${model.refrigerant}; version ${model.version}`}
        mark={model.demoData ? <Badge tone="muted">demo data</Badge> : undefined}
      />
      <div className="grid grid-cols-[minmax(0,1fr)] gap-8">
        {mayEdit ? (
          <ModelActions
            modelId={model.id}
            versions={versions}
            copy={copyEquipment}
            retire={retireModel}
            bringBack={bringModelBack}
          />
        ) : null}
        <ModelFacts model={model} />
        <section aria-labelledby="performance">
          <h2 id="performance" className="mb-2 text-lg font-semibold">
            Performance data
          </h2>
          <PerformanceTable rows={model.performance} />
        </section>
        <section aria-labelledby="fan" className="grid gap-3">
          <h2 id="fan" className="text-lg font-semibold">
            Fan table
          </h2>
          <FanCurves model={model} />
          <FanTable rows={model.fan} />
        </section>
        {mayEdit ? <ModelVersions versions={versions} shown={model.id} /> : null}
      </div>
    </>
  );
}
