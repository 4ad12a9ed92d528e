import { TextLink } from "@/components/ui/button";
import { Card } from "@/components/ui/card";
import { type ForecastInForce, forecastSentence } from "@/lib/domain/forecast";

/** The kept forecast on a job's page, in the homeowner's sentence. */
export function ForecastLine({
  jobId,
  forecast,
}: {
  readonly jobId: string;
  readonly forecast: ForecastInForce;
}) {
  return (
    <Card title="Forecast">
      <p>
        {forecastSentence(forecast)}{" "}
        <span className="text-sm text-muted">
          Kept by {forecast.keptByName}, {forecast.keptAt.slice(0, 10)}
        </span>
      </p>
      {forecast.stale ? (
        <p className="mt-2">
          <strong>The design, its weather or the model has changed since.</strong> Keep it anew on the options
          page.
        </p>
      ) : null}
      <TextLink href={`/jobs/${jobId}/options`}>Options and forecast</TextLink>
    </Card>
  );
}
