import type { Metadata } from "next";
import { ControlTable, EquipmentTable, InstrumentTable } from "@/components/catalog/catalog-tables";
import { PageHeader } from "@/components/shell/page-header";
import { pageScope } from "@/lib/server/page";
import { catalogView } from "@/lib/services/catalog";

export const metadata: Metadata = { title: "Catalog" };

export default async function CatalogPage() {
  const scope = await pageScope("catalog.read");
  const view = await catalogView(scope);
  return (
    <>
      <PageHeader
        title="Catalog"
        lead="Equipment with its tables, thermostats, and instruments with their accuracy."
      />
      <div className="grid gap-8">
        <section>
          <h2 id="equipment" className="mb-2 text-lg font-semibold">
            Equipment
          </h2>
          <EquipmentTable equipment={view.equipment} />
        </section>
        <section>
          <h2 id="controls" className="mb-2 text-lg font-semibold">
            Thermostats
          </h2>
          <ControlTable controls={view.controls} />
        </section>
        <section>
          <h2 id="instruments" className="mb-2 text-lg font-semibold">
            Instruments
          </h2>
          <InstrumentTable instruments={view.instruments} />
        </section>
      </div>
    </>
  );
}
