import { Button, TextLink } from "@/components/ui/button";
import { numberText } from "@/lib/charts/number-text";
import { designOffers } from "@/lib/domain/design-offers";
import type { WeatherDesign } from "@/lib/domain/evaluate";
import type { TypedValues } from "./typed-values";

type Props = {
  readonly jobId: string;
  readonly weather: WeatherDesign | null;
  readonly typed: TypedValues;
  readonly enter: (values: TypedValues, field: string) => void;
};

/** The weather file's own design values, each entered by a press of its own; nothing is filled in by itself. */
export function DesignValues({ jobId, weather, typed, enter }: Props) {
  if (weather === null)
    return (
      <p className="mb-6 border border-rule p-3 text-sm">
        No weather year is chosen for this job.{" "}
        <TextLink href={`/jobs/${jobId}/weather`}>Choose one</TextLink>, and its own design values are offered
        here.
      </p>
    );
  return (
    <fieldset className="mb-6 border border-rule p-3">
      <legend className="px-1 text-sm font-semibold">Design values of the weather file {weather.name}</legend>
      <ul className="grid gap-2 sm:grid-cols-2">
        {designOffers(weather).map(({ field, name, value }) => {
          const isEntered = Number(typed[field] ?? Number.NaN) === value;
          return (
            <li key={field} className="flex flex-wrap items-center justify-between gap-2 text-sm">
              <span>
                {name}: <strong>{numberText(value, 1)} °F</strong>
              </span>
              <Button
                disabled={isEntered}
                aria-label={`Enter ${name}, ${numberText(value, 1)} °F`}
                onClick={() => enter({ [field]: value }, field)}
              >
                {isEntered ? "Entered" : "Enter"}
              </Button>
            </li>
          );
        })}
      </ul>
    </fieldset>
  );
}
