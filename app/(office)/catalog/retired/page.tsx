import type { Metadata } from "next";
import { RetiredTable } from "@/components/catalog/retired-table";
import { PageHeader } from "@/components/shell/page-header";
import { pageScope } from "@/lib/server/page";
import { retiredView } from "@/lib/services/catalog";
import { bringModelBack, bringThermostatBack, retireTool } from "../actions";

export const metadata: Metadata = { title: "Retired" };

export default async function RetiredPage() {
  const scope = await pageScope("catalog.edit");
  return (
    <>
      <PageHeader
        title="Retired"
        crumbs={[{ href: "/catalog", label: "Catalog" }]}
        lead="Off the lists, so that no new job can choose it. Jobs that rest on it keep it."
      />
      <RetiredTable
        retired={await retiredView(scope)}
        bringBack={{ equipment: bringModelBack, thermostat: bringThermostatBack, instrument: retireTool }}
      />
    </>
  );
}
