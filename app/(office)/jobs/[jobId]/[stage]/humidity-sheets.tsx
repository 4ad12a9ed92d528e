import { ForecastLived } from "@/components/forecast-lived/forecast-lived";
import { LogReview } from "@/components/logs/log-review";
import type { JobContext } from "@/lib/domain/evaluate";
import type { Job } from "@/lib/domain/jobs";
import type { TenantScope } from "@/lib/domain/scope";
import { forecastLivedView } from "@/lib/services/forecast-lived-view";
import { logReviewView } from "@/lib/services/log-view";
import { holdForecast } from "./actions";

type Props = { readonly scope: TenantScope; readonly job: Job; readonly context: JobContext };

/** What the house did by its log, and beside it what was forecast. */
export async function HumiditySheets({ scope, job, context }: Props) {
  return (
    <>
      <LogReview view={await logReviewView(scope, job, context)} />
      <ForecastLived view={await forecastLivedView(scope, job, context)} hold={holdForecast} />
    </>
  );
}
