import type { Metadata } from "next";
import { CompanyDeletion } from "@/components/company/company-deletion";
import { CompanyExports } from "@/components/company/company-exports";
import { CompanyTabs } from "@/components/company/company-tabs";
import { PageHeader } from "@/components/shell/page-header";
import { Card } from "@/components/ui/card";
import { FollowWork } from "@/components/work/follow-work";
import { pageScope } from "@/lib/server/page";
import { exportsView } from "@/lib/services/company-export";
import { deleteEverything, makeExport } from "./actions";

export const metadata: Metadata = { title: "Data" };

export default async function DataPage() {
  const scope = await pageScope("company.export");
  const { exports, making, companyName, timeZone } = await exportsView(scope);
  return (
    <>
      <PageHeader
        title="Data"
        crumbs={[{ href: "/company", label: "Company" }]}
        lead="An export of everything your company keeps here, and the company's deletion."
      />
      <CompanyTabs current="data" />
      <div className="mt-5 grid items-start gap-5 xl:grid-cols-[minmax(0,1fr)_24rem]">
        <Card title="Export everything">
          <CompanyExports exports={exports} making={making} timeZone={timeZone} make={makeExport} />
        </Card>
        <Card title="Delete the company">
          <CompanyDeletion companyName={companyName} remove={deleteEverything} />
        </Card>
      </div>
      <FollowWork active={making} />
    </>
  );
}
