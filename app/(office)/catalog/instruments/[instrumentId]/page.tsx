import type { Metadata } from "next";
import { CalibrationHistory } from "@/components/catalog/calibration-history";
import { CatalogPress } from "@/components/catalog/catalog-press";
import { InstrumentForm } from "@/components/catalog/instrument-form";
import { PageHeader } from "@/components/shell/page-header";
import { load, pageScope } from "@/lib/server/page";
import { calibrationHistory, instrumentView } from "@/lib/services/catalog";
import { keepInstrument, retireTool } from "../../actions";

export const metadata: Metadata = { title: "Instrument" };

type Props = { readonly params: Promise<{ readonly instrumentId: string }> };

export default async function InstrumentPage({ params }: Props) {
  const scope = await pageScope("catalog.edit");
  const { instrumentId } = await params;
  const tool = instrumentId === "new" ? null : await load(instrumentView(scope, instrumentId));
  return (
    <>
      <PageHeader
        title={tool ? tool.name : "New instrument"}
        crumbs={[{ href: "/catalog", label: "Catalog" }]}
        lead="What it reads and how well: the verdicts of a startup rest on this."
      />
      <InstrumentForm key={tool?.version} instrument={tool} send={keepInstrument} />
      {tool ? <CalibrationHistory calibrations={await calibrationHistory(scope, tool.id)} /> : null}
      {tool ? (
        <div className="mt-6 flex flex-wrap gap-3">
          <CatalogPress
            input={{ instrumentId: tool.id, retired: !tool.retired }}
            send={retireTool}
            to="/catalog"
            variant="danger"
          >
            {tool.retired ? "Bring this instrument back" : "Retire this instrument"}
          </CatalogPress>
        </div>
      ) : null}
    </>
  );
}
