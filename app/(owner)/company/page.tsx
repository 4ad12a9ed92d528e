import type { Metadata } from "next";
import { BrandForm } from "@/components/company/brand-form";
import { BrandPreview } from "@/components/company/brand-preview";
import { CompanyTabs } from "@/components/company/company-tabs";
import { LogoForm } from "@/components/company/logo-form";
import { PageHeader } from "@/components/shell/page-header";
import { Card } from "@/components/ui/card";
import { pageScope } from "@/lib/server/page";
import { brandView } from "@/lib/services/brand";
import { save, takeLogoOff } from "./actions";

export const metadata: Metadata = { title: "Company" };

export default async function CompanyPage() {
  const scope = await pageScope("brand.edit");
  const brand = await brandView(scope);
  return (
    <>
      <PageHeader title="Company" lead="How your company appears on screens and packets." />
      <CompanyTabs current="brand" />
      <div className="mt-5 grid items-start gap-5 xl:grid-cols-[minmax(0,1fr)_24rem]">
        <Card title="Brand">
          <BrandForm formId="brand" brand={brand} save={save} />
        </Card>
        <div className="grid gap-5">
          <Card title="Logo">
            <LogoForm logoHref={brand.logoHref} takeOff={takeLogoOff} />
          </Card>
          <Card title="First page of a packet">
            <BrandPreview formId="brand" logoKey={brand.logoHref ?? ""} />
          </Card>
        </div>
      </div>
    </>
  );
}
