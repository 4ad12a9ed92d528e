import type { SearchAxis, SearchFound, SettingSensitivity } from "@/lib/engineering/simulation";

export const SEARCH_AXIS_WORDS: Readonly<Record<SearchAxis, string>> = {
  capacity: "Capacity setting",
  airflow: "Airflow setting",
  controls: "Control settings",
  ventilation: "Ventilation",
  dehumidifier: "Dehumidifier",
};

/** A setting that moves fewer hours than this in a year hardly matters. Common practice, no source. */
const HARDLY_H = 24;

/** Which setting matters most, in sentences: what moves the hours above the limit, from where to where, and what does not. */
export function sensitivityWords(settings: readonly SettingSensitivity[]): readonly string[] {
  const turned = settings.filter(({ choices }) => choices.length > 1);
  const moving = turned.filter(({ spreadHours }) => spreadHours >= HARDLY_H);
  const still = turned.filter(({ spreadHours }) => spreadHours < HARDLY_H);
  const [first, ...others] = moving.toSorted((a, b) => b.spreadHours - a.spreadHours);
  return [
    ...(first === undefined
      ? []
      : [
          `${SEARCH_AXIS_WORDS[first.axis]} matters most: ${fromTo(first)}, ${hours(first.spreadHours)} apart.`,
        ]),
    ...others.map(
      (one) => `${SEARCH_AXIS_WORDS[one.axis]}: ${fromTo(one)}, ${hours(one.spreadHours)} apart.`,
    ),
    ...(still.length === 0
      ? []
      : [
          `${still.map(({ axis }) => SEARCH_AXIS_WORDS[axis]).join(", ")}: less than a day's hours in the year, whichever is chosen.`,
        ]),
  ];
}

function fromTo({ axis, choices }: SettingSensitivity): string {
  const sorted = choices.toSorted((a, b) => a.hoursAboveLimit - b.hoursAboveLimit);
  const said = (one: SearchFound | undefined) =>
    one === undefined ? "" : `“${one.names[axis]}” leaves ${hours(one.hoursAboveLimit)}`;
  return `${said(sorted[0])}, ${said(sorted.at(-1))}`;
}

const hours = (value: number) => `${Math.round(value).toLocaleString("en-US")} h`;
