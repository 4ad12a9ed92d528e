import type { Metadata } from "next";
import { ModelText } from "@/components/forecast/model-text";
import { PageHeader } from "@/components/shell/page-header";
import { pageScope } from "@/lib/server/page";

export const metadata: Metadata = { title: "How a forecast is computed" };

export default async function ForecastModelPage() {
  await pageScope("job.read");
  return (
    <>
      <PageHeader
        title="How a forecast is computed"
        lead="What the year in a house is made of, what it leaves out, and what it is not for."
      />
      <ModelText />
    </>
  );
}
