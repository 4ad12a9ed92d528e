import type { Metadata } from "next";
import { MakeMonth } from "@/components/across-jobs/make-month";
import { MonthList } from "@/components/across-jobs/month-list";
import { PageHeader } from "@/components/shell/page-header";
import { LinkButton } from "@/components/ui/button";
import { Card } from "@/components/ui/card";
import { pageScope } from "@/lib/server/page";
import { companyToday } from "@/lib/services/company-today";
import { listMonths } from "@/lib/services/month-digest";
import { makeMonth } from "./actions";

export const metadata: Metadata = { title: "Months" };

export default async function MonthsPage() {
  const scope = await pageScope("across-jobs.read");
  const months = await listMonths(scope);
  const today = await companyToday(scope, new Date());
  return (
    <>
      <PageHeader
        title="Months"
        lead="The month on two pages: what came in, and what jobs with humidity complaints have in common. Each is kept as it was made."
      />
      <LinkButton href="/across-jobs" className="no-print mt-3">
        Back to across jobs
      </LinkButton>
      <div className="mt-5 grid gap-6">
        <Card title="Make a month">
          <MakeMonth month={today.slice(0, 7)} make={makeMonth} />
        </Card>
        <MonthList months={months} />
      </div>
    </>
  );
}
