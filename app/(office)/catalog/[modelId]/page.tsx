import type { Metadata } from "next";
import { FanTable, PerformanceTable } from "@/components/catalog/model-tables";
import { PageHeader } from "@/components/shell/page-header";
import { Badge } from "@/components/ui/badge";
import { COMPRESSOR_KIND_NAMES } from "@/lib/domain/catalog";
import { load, pageScope } from "@/lib/server/page";
import { equipmentView } from "@/lib/services/catalog";

export const metadata: Metadata = { title: "Equipment" };

export default async function EquipmentPage({
  params,
}: {
  readonly params: Promise<{ readonly modelId: string }>;
}) {
  const scope = await pageScope("catalog.read");
  const model = await load(equipmentView(scope, (await params).modelId));
  return (
    <>
      <PageHeader
        title={`${model.maker} ${model.name}`}
        crumbs={[{ href: "/catalog", label: "Catalog" }]}
        lead={`${model.nominalTons} tons, ${COMPRESSOR_KIND_NAMES[model.compressorKind]}, ${model.refrigerant}; version ${model.version}`}
        mark={model.demoData ? <Badge tone="muted">demo data</Badge> : undefined}
      />
      <div className="grid gap-8">
        <section aria-labelledby="performance">
          <h2 id="performance" className="mb-2 text-lg font-semibold">
            Performance data
          </h2>
          <PerformanceTable rows={model.performance} />
        </section>
        <section aria-labelledby="fan">
          <h2 id="fan" className="mb-2 text-lg font-semibold">
            Fan table
          </h2>
          <FanTable rows={model.fan} />
        </section>
      </div>
    </>
  );
}
