import { monthRanges } from "@/lib/charts/month-ranges";
import { numberText } from "@/lib/charts/number-text";
import {
  forecastSentence,
  HOUSE_ASSUMPTION_WORDS,
  type KeptForecastWhole,
  SYSTEM_ASSUMPTIONS,
} from "@/lib/domain/forecast";
import type { ForecastRange } from "@/lib/engineering/simulation";
import type { Block, SheetSection } from "@/lib/reports/sheet/view";
import { CHART_WIDTH } from "./lived-chart";
import type { PacketParts } from "./parts";

/** The forecast kept with the job as the file keeps it: its figures as ranges, and everything it assumed. */
export function forecastSection(parts: PacketParts): SheetSection {
  const { forecast } = parts;
  const title = "Forecast of the design";
  if (forecast === null)
    return { title, blocks: [{ kind: "words", words: "No forecast is kept with this job." }] };
  const { humidityLimitPct: limitPct, figures } = forecast;
  const chart =
    figures.ranges.hoursAboveLimit.high < 0.5
      ? null
      : monthRanges({ width: CHART_WIDTH, limitPct, months: figures.hoursAboveLimitByMonth });
  return {
    title,
    lead: "A model’s forecast, not a measurement: a simulated typical year of a house derived from its load summary. Least and most are those of the houses and years drawn for what nobody has measured.",
    blocks: [
      ...staleNote(parts),
      { kind: "words", words: forecastSentence(forecast) },
      { kind: "facts", rows: madeFrom(forecast) },
      ...(chart === null ? [] : [{ kind: "chart", chart } as const]),
      rangesTable(forecast),
      {
        kind: "heading",
        text: "What it assumes",
        note: "From records where they have it, otherwise as named.",
      },
      assumptionTable(forecast),
    ],
  };
}

/** That the design is no longer what was forecast, where that is so. */
export function staleNote({ context }: PacketParts): readonly Block[] {
  return context.forecast?.stale === true
    ? [
        {
          kind: "words",
          words: "The design, its weather or the model has changed since this forecast was kept.",
        },
      ]
    : [];
}

function madeFrom(forecast: KeptForecastWhole) {
  const { optionLabel, weatherName, keptAt, keptByName, engineVersion, members, seed, figures } = forecast;
  return [
    { label: "Design", text: optionLabel },
    { label: "Weather", text: weatherName },
    { label: "Kept", text: `${keptAt.slice(0, 10)} by ${keptByName}` },
    {
      label: "Model",
      text: `version ${engineVersion}, ${numberText(figures.membersRun, 0)} of ${numberText(members, 0)} houses and years, seed ${seed}`,
    },
    { label: "SHA-256 of its inputs", text: forecast.inputsHash },
  ];
}

function rangesTable({ figures, humidityLimitPct }: KeptForecastWhole): Block {
  const { ranges, meanRunMin, kwh, worstWeekHours } = figures;
  const rows: readonly (readonly [string, string, number, ForecastRange | null])[] = [
    [`Hours at or below ${humidityLimitPct} %`, "h", 0, ranges.dryHours],
    [`Hours above ${humidityLimitPct} %`, "h", 0, ranges.hoursAboveLimit],
    ["Above it in the worst week", "h", 0, worstWeekHours],
    ["Compressor starts", "", 0, ranges.starts],
    ["Mean run", "min", 0, meanRunMin],
    ["First stage running", "h", 0, ranges.firstStageHours],
    ["Second stage running", "h", 0, ranges.secondStageHours],
    ["Electricity, without winter’s heat pump", "kWh", 0, kwh],
  ];
  return {
    kind: "table",
    columns: [
      { head: "In a typical year" },
      { head: "House as assumed", width: 96, align: "right", strong: true },
      { head: "Least", width: 80, align: "right" },
      { head: "Most", width: 80, align: "right" },
    ],
    rows: rows.flatMap(([label, unit, decimals, range]) => {
      if (range === null) return [];
      const say = (value: number) => `${numberText(value, decimals)} ${unit}`.trim();
      return [[label, say(range.central), say(range.low), say(range.high)]];
    }),
    ifNone: "",
  };
}

function assumptionTable({ result }: KeptForecastWhole): Block {
  const house = result.houseAssumptions.map((one) => {
    const { label, decimals } = HOUSE_ASSUMPTION_WORDS[one.name];
    return assumptionRow(label, one, decimals, one.low < one.high ? one : null);
  });
  const system = result.systemAssumptions.map((one) =>
    assumptionRow(one.label, one, SYSTEM_ASSUMPTIONS[one.name].decimals, null),
  );
  return {
    kind: "table",
    columns: [
      { head: "Assumption", width: 132 },
      { head: "Value", width: 72, align: "right", strong: true },
      { head: "Drawn between", width: 66, align: "right" },
      { head: "Why" },
    ],
    rows: [...house, ...system],
    ifNone: "Nothing was assumed.",
  };
}

/** Units that do not read well after a number. */
const UNIT_WORDS: Readonly<Record<string, string>> = { "1/h": "an hour", ratio: "times" };

function assumptionRow(
  label: string,
  { value, unit, why }: { readonly value: number; readonly unit: string; readonly why: string },
  decimals: number,
  spread: { readonly low: number; readonly high: number } | null,
): readonly string[] {
  const say = (number: number) => numberText(number, decimals);
  return [
    label,
    `${say(value)} ${UNIT_WORDS[unit] ?? unit}`.trim(),
    spread === null ? "–" : `${say(spread.low)} to ${say(spread.high)}`,
    why,
  ];
}
