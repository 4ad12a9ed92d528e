import type { Metadata } from "next";
import { ApiTokenForm } from "@/components/api/api-token-form";
import { ApiTokenTable } from "@/components/api/api-token-table";
import { CompanyTabs } from "@/components/company/company-tabs";
import { PageHeader } from "@/components/shell/page-header";
import { TextLink } from "@/components/ui/button";
import { Card } from "@/components/ui/card";
import { pageScope } from "@/lib/server/page";
import { apiTokensView } from "@/lib/services/api-tokens";
import { make, revoke } from "./actions";

export const metadata: Metadata = { title: "API tokens" };

export default async function ApiTokensPage() {
  const scope = await pageScope("tokens.manage");
  const { tokens, timeZone } = await apiTokensView(scope);
  return (
    <>
      <PageHeader
        title="API tokens"
        crumbs={[{ href: "/company", label: "Company" }]}
        lead="A token lets a program of yours read this company's jobs and, if you say so, add callbacks and logs. It never reaches members, brand, limits or other tokens. It works in your name, and ends when you stop being an owner."
      />
      <CompanyTabs current="tokens" />
      <div className="mt-5 grid items-start gap-5 xl:grid-cols-[minmax(0,1fr)_22rem]">
        <ApiTokenTable tokens={tokens} timeZone={timeZone} revoke={revoke} />
        <Card title="New token">
          <ApiTokenForm make={make} />
          <p className="mt-4 border-t border-rule pt-3 text-sm">
            <TextLink href="/api-reference">How programs call</TextLink>: every call with an example. It is
            open to whoever writes the program.
          </p>
        </Card>
      </div>
    </>
  );
}
