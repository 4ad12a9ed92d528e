import type { Metadata } from "next";
import { InstrumentReportTable } from "@/components/across-jobs/instrument-report-table";
import { ThermostatDriftTable } from "@/components/across-jobs/thermostat-drift-table";
import { PageHeader } from "@/components/shell/page-header";
import { LinkButton } from "@/components/ui/button";
import { pageScope } from "@/lib/server/page";
import { instrumentsReport } from "@/lib/services/instrument-report";

export const metadata: Metadata = { title: "Instruments and sensors" };

export default async function InstrumentsPage() {
  const scope = await pageScope("across-jobs.read");
  const { instruments, thermostats } = await instrumentsReport(scope, new Date());
  return (
    <>
      <PageHeader
        title="Instruments and sensors"
        lead="Signed startups of the last two years: calibration, corrections over time, and startups on which two ways of measuring disagree."
      />
      <LinkButton href="/across-jobs" className="no-print mt-3">
        Back to across jobs
      </LinkButton>
      <div className="mt-5">
        <InstrumentReportTable reports={instruments} />
      </div>
      <h2 className="mt-8 mb-3 text-lg font-semibold">Thermostats</h2>
      <ThermostatDriftTable drifting={thermostats} />
    </>
  );
}
