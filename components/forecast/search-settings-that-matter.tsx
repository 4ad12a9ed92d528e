import { numberText } from "@/lib/charts/number-text";
import { SEARCH_AXIS_WORDS, sensitivityWords } from "@/lib/domain/forecast";
import type { SettingSensitivity } from "@/lib/engineering/simulation";

/** Which setting moves the hours above the limit most, each turned alone around the best that was found. */
export function SettingsThatMatter({
  settings,
  limitPct,
}: {
  readonly settings: readonly SettingSensitivity[];
  readonly limitPct: number;
}) {
  if (settings.length === 0) return null;
  return (
    <section aria-labelledby="matters-heading">
      <h3 id="matters-heading" className="mb-2 font-semibold">
        Which setting matters most
      </h3>
      <p className="mb-2 text-sm text-muted">
        Each turned alone around the first line above; hours above {limitPct} %.
      </p>
      <ul className="mb-4 grid list-disc gap-1 pl-4">
        {sensitivityWords(settings).map((sentence) => (
          <li key={sentence}>{sentence}</li>
        ))}
      </ul>
      <dl className="grid gap-3">
        {settings.map(({ axis, choices, spreadHours }) => (
          <div key={axis}>
            <dt className="font-medium">
              {SEARCH_AXIS_WORDS[axis]}: {numberText(spreadHours, 0)} h between its choices
            </dt>
            <dd className="text-sm">
              {choices.map((one) => `${one.names[axis]} ${numberText(one.hoursAboveLimit, 0)} h`).join(" · ")}
            </dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
