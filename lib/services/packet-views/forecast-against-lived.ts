import { fitChart } from "@/lib/charts/fit-chart";
import { numberText } from "@/lib/charts/number-text";
import { forecastSentence } from "@/lib/domain/forecast";
import { forecastLivedPaper } from "@/lib/domain/forecast-lived/view";
import type { ForecastRange } from "@/lib/engineering/simulation";
import type { JudgedFigure } from "@/lib/reports/figures";
import type { Block, SheetSection } from "@/lib/reports/sheet/view";
import { staleNote } from "./forecast";
import { CHART_WIDTH } from "./lived-chart";
import type { PacketParts } from "./parts";
import { stripOf } from "./targets";

const TITLE = "Forecast against lived";

/** The forecast kept with the job beside what the house's own log shows. */
export function forecastAgainstLived(parts: PacketParts): SheetSection {
  const { forecast, lived } = parts.context;
  if (forecast === null && lived === null)
    return { title: TITLE, blocks: [{ kind: "words", words: "No forecast is kept with this job." }] };
  const sentence: readonly Block[] =
    forecast === null ? [] : [...staleNote(parts), { kind: "words", words: forecastSentence(forecast) }];
  if (lived === null)
    return {
      title: TITLE,
      lead: "It has not been held against a log of the house yet.",
      blocks: sentence,
    };
  const paper = forecastLivedPaper(lived);
  return {
    title: TITLE,
    lead: paper.lead,
    blocks: [
      ...(lived.outdated
        ? [
            {
              kind: "words",
              words: "Records or weather have changed since: hold it against the log anew.",
            } as const,
          ]
        : []),
      ...sentence,
      { kind: "figures", heading: "Lived against the forecast’s range", figures: figuresOf(parts) },
      ...monthsTable(parts),
      {
        kind: "table",
        columns: [
          { head: "In the hours of the log" },
          { head: "Lived", width: 80, align: "right", strong: true },
          { head: "Forecast (least to most)", width: 122, align: "right" },
          { head: "House fitted to the log", width: 122, align: "right" },
        ],
        rows: paper.rows.map((row) => [row.label, row.lived, row.forecast, row.fitted]),
        ifNone: "",
      },
      ...picture(parts),
      ...(paper.explanations.length === 0
        ? []
        : ([
            { kind: "heading", text: "What would explain a difference" },
            { kind: "list", items: paper.explanations, numbered: false },
          ] as const)),
      ...lived.fitNotes.map((words) => ({ kind: "words", words }) as const),
    ],
  };
}

/** Each lived number as the lozenge, the forecast's range as the band. */
function figuresOf({ context, evaluation }: PacketParts): readonly JudgedFigure[] {
  const { lived } = context;
  if (lived === null) return [];
  const verdict = evaluation.ledger.find((line) => line.key === "forecast-lived")?.verdict ?? null;
  const figure = (
    label: string,
    unit: string,
    decimals: number,
    value: number,
    range: ForecastRange,
  ): JudgedFigure => {
    const say = (one: number) => numberText(one, decimals);
    return {
      label,
      value: say(value),
      unit,
      verdict: null,
      aim: `forecast ${say(range.central)} ${unit} (${say(range.low)} to ${say(range.high)})`,
      plainWords: null,
      strip: stripOf({ min: range.low, max: range.high }, value, { low: value, high: value }),
    };
  };
  const { lived: is, forecast } = lived;
  return [
    {
      ...figure(`Above ${lived.humidityLimitPct} %`, "h", 0, is.hoursAboveLimit, forecast.hoursAboveLimit),
      verdict,
    },
    figure("Mean humidity", "%", 1, is.meanRhPct, forecast.meanRhPct),
    ...(is.runHours === null || forecast.runHours === null
      ? []
      : [figure("Compressor ran", "h", 0, is.runHours, forecast.runHours)]),
  ];
}

/** Hours above the limit month by month, where the log is longer than one. */
function monthsTable({ context }: PacketParts): readonly Block[] {
  const { lived } = context;
  if (lived === null || lived.months.length < 2) return [];
  const whole = (hours: number) => numberText(hours, 0);
  const range = (one: ForecastRange | null) =>
    one === null ? "–" : `${whole(one.central)} h (${whole(one.low)} to ${whole(one.high)})`;
  return [
    {
      kind: "table",
      columns: [
        { head: `Above ${lived.humidityLimitPct} %, by month` },
        { head: "Lived", width: 80, align: "right", strong: true },
        { head: "Forecast (least to most)", width: 122, align: "right" },
        { head: "House fitted to the log", width: 122, align: "right" },
      ],
      rows: lived.months.map((month) => [
        `${month.month} (${whole(month.hours)} h)`,
        `${whole(month.lived)} h`,
        range(month.forecast),
        range(month.fitted),
      ]),
      ifNone: "",
    },
  ];
}

/** Dew points measured, as assumed and as fitted, as on the review's page. */
function picture({ fitPicture, log }: PacketParts): readonly Block[] {
  if (fitPicture === null) return [];
  const chart = fitChart({ ...fitPicture, timeZone: log.timeZone, width: CHART_WIDTH });
  return chart === null ? [] : [{ kind: "chart", chart }];
}
