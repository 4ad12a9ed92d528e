import type { Metadata } from "next";
import { CatalogSearch } from "@/components/catalog/catalog-search";
import { ControlTable, EquipmentTable, InstrumentTable } from "@/components/catalog/catalog-tables";
import { PageHeader } from "@/components/shell/page-header";
import { pageScope } from "@/lib/server/page";
import { catalogView } from "@/lib/services/catalog";

export const metadata: Metadata = { title: "Catalog" };

type Props = { readonly searchParams: Promise<{ readonly q?: string | readonly string[] }> };

export default async function CatalogPage({ searchParams }: Props) {
  const scope = await pageScope("catalog.read");
  const { q } = await searchParams;
  const search = typeof q === "string" ? q : "";
  const isSearch = search.trim() !== "";
  const view = await catalogView(scope, search);
  return (
    <>
      <PageHeader
        title="Catalog"
        lead="Equipment with its tables, thermostats, and instruments with their accuracy."
      />
      <div className="grid gap-8">
        <CatalogSearch
          search={search}
          found={view.equipment.length + view.controls.length + view.instruments.length}
          mayEdit={view.mayEdit}
        />
        <section>
          <h2 id="equipment" className="mb-2 text-lg font-semibold">
            Equipment
          </h2>
          <EquipmentTable equipment={view.equipment} isSearch={isSearch} />
        </section>
        <section>
          <h2 id="controls" className="mb-2 text-lg font-semibold">
            Thermostats
          </h2>
          <ControlTable controls={view.controls} isSearch={isSearch} mayEdit={view.mayEdit} />
        </section>
        <section>
          <h2 id="instruments" className="mb-2 text-lg font-semibold">
            Instruments
          </h2>
          <InstrumentTable instruments={view.instruments} isSearch={isSearch} mayEdit={view.mayEdit} />
        </section>
      </div>
    </>
  );
}
