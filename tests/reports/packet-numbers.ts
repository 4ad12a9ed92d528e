import { explanations } from "@/lib/domain/forecast-lived/explain";
import { COLUMNS, type Column, type LedgerLine } from "@/lib/domain/ledger";
import { STAGE_FIELDS, STAGES } from "@/lib/domain/stages";
import type { ForecastRange } from "@/lib/engineering/simulation";
import type { PacketParts } from "@/lib/services/packet-views/parts";
import { stagePictures } from "@/lib/services/packet-views/stage-pictures";

/** The quantities of a text: each number with a unit behind it, as `24,613 Btu/h`. */
export function quantitiesIn(text: string): readonly string[] {
  const plain = text.replaceAll(/[\s\u00a0]+/g, " ");
  return [...plain.matchAll(QUANTITY)].map(
    ([, number = "", unit = ""]) => `${number} ${UNIT_NAMES[unit] ?? unit}`,
  );
}

const UNITS = [
  "Btu/h",
  "Btu/\\(W·h\\)",
  "cfm/ton",
  "cfm/tonelada",
  "cfm at 50 Pa",
  "cfm",
  "°F",
  "%",
  "lb/h",
  "gal/h",
  "in\\. w\\.c\\.",
  "psig",
  "per h",
  "pints/day",
  "pint/day",
  "kWh",
  "kW",
  "microns",
  "min",
  "toneladas",
  "tons",
  "lb",
  "oz",
  "ft²",
  "ft",
  "W",
  "V",
  "A",
  "h",
  "s",
];
const NUMBER = "[−-]?\\d[\\d,]*(?:\\.\\d+)?";
const QUANTITY = new RegExp(`(?<![\\d.,A-Za-z-])(${NUMBER}) (${UNITS.join("|")})(?![A-Za-z²/·])`, "g");
const UNIT_NAMES: Readonly<Record<string, string>> = {
  toneladas: "tons",
  "cfm/tonelada": "cfm/ton",
};

/** A number as it has to stand on paper, worked out apart from the code that prints it. */
export function figure(value: number, decimals: number, unit: string): string {
  const digits = { minimumFractionDigits: decimals, maximumFractionDigits: decimals };
  const text = new Intl.NumberFormat("en-US", digits).format(value).replace("-", "−");
  return `${/^−[0.,]+$/.test(text) ? text.slice(1) : text} ${unit}`.trim();
}

/** What the ledger says, cell by cell. */
export function ledgerQuantities({ evaluation }: Pick<PacketParts, "evaluation">): readonly string[] {
  return evaluation.ledger.flatMap((line) =>
    COLUMNS.flatMap((column) => {
      const { value, uncertainty, note } = line.cells[column];
      return [
        ...(typeof value === "number" ? [figure(value, line.decimals, line.unit)] : []),
        ...(uncertainty === null ? [] : [figure(uncertainty, line.decimals, line.unit)]),
        ...(note === null ? [] : quantitiesIn(note)),
      ];
    }),
  );
}

/** The cells of each line as they have to follow each other on paper, from designed to lived. */
export function ledgerRows(
  { evaluation }: Pick<PacketParts, "evaluation">,
  missing: Readonly<Record<Column, string>>,
  isPrinted: (line: LedgerLine) => boolean,
): readonly RegExp[] {
  return evaluation.ledger.filter(isPrinted).flatMap((line) => {
    const cells = COLUMNS.map((column) => {
      const { value, uncertainty } = line.cells[column];
      if (typeof value === "string") return null;
      if (value === null) return missing[column];
      const sure = uncertainty === null ? "" : ` ± ${figure(uncertainty, line.decimals, "")}`;
      return `${figure(value, line.decimals, line.unit)}${sure}`;
    });
    const asPatterns = cells.flatMap((cell) => cell?.replaceAll(/[.*+?^${}()|[\]\\]/g, "\\$&") ?? []);
    // A note may stand below a cell.
    return cells.includes(null) ? [] : [new RegExp(asPatterns.join("(?: .{1,90}?)? "))];
  });
}

/** What was entered in the records: with its own digits, at least those of its field. */
function entered({ context }: PacketParts): readonly string[] {
  return STAGES.flatMap((stage) =>
    Object.entries(STAGE_FIELDS[stage]).flatMap(([key, field]) => {
      const value = (context.inputs[stage] as Readonly<Record<string, unknown>>)[key];
      if (field.kind !== "number" || typeof value !== "number") {
        return typeof value === "string" ? quantitiesIn(value) : [];
      }
      const own = /\.(\d+)$/.exec(String(value))?.[1]?.length ?? 0;
      return [figure(value, Math.max(own, field.decimals), field.unit), figure(value, own, field.unit)];
    }),
  );
}

/** What the findings say in words and figures, of the records signed and as they stand. */
function found({ evaluation, records }: PacketParts): readonly string[] {
  return STAGES.flatMap((stage) => [
    ...evaluation.findings[stage],
    ...(records[stage]?.findings ?? []),
  ]).flatMap(({ statement, nextStep, caution, basis, figures, title }) => [
    ...quantitiesIn([title, statement, nextStep ?? "", caution ?? "", basis.source].join(" ; ")),
    // Read as they will be: of `0.083 in. w.c. per 100 ft` that is `0.083 in. w.c.`.
    ...figures.flatMap(({ value, decimals, unit, uncertainty }) =>
      quantitiesIn(`${figure(value, decimals, unit)} ; ${figure(uncertainty ?? value, decimals, unit)}`),
    ),
  ]);
}

/** What readings are aimed at: design, maker's targets and company limits, by the equations of the findings. */
function aimed({ context, evaluation }: PacketParts): readonly string[] {
  const { inputs, limits, model } = context;
  const startup = inputs.startup_record;
  const design = inputs.airflow_setup.designExternalStaticInWc;
  const designCfm = evaluation.ledger.find(({ key }) => key === "airflow-full")?.cells.designed.value;
  const around = (middle: unknown, by: number, decimals: number, unit: string) =>
    typeof middle !== "number"
      ? []
      : [middle - by, middle, middle + by].map((value) => figure(value, decimals, unit));
  const goodShare = limits["airflow.goodPct"] / 100;
  const staticBy = Math.max(
    (limits["airflow.staticDesignPct"] / 100) * (design ?? 0),
    limits["airflow.staticDesignInWc"],
  );
  const exact = results(evaluation);
  return [
    ...around(exact, (exact ?? 0) * goodShare, 0, "cfm"),
    ...around(designCfm, 0, 0, "cfm"),
    ...around(design, staticBy, 2, "in. w.c."),
    ...around(model?.data.limits.maxExternalStaticInWc, 0, 2, "in. w.c."),
    ...around(
      startup.targetSubcoolingF ?? model?.data.targets.subcoolingF,
      limits["refrigerant.subcoolingTolerance"],
      1,
      "°F",
    ),
    ...around(
      startup.targetSuperheatF ?? model?.data.targets.superheatF,
      limits["refrigerant.superheatTolerance"],
      1,
      "°F",
    ),
    ...(["total", "sensible", "moisture"] as const).flatMap((what) => {
      const rule = { total: "total-capacity", sensible: "sensible-capacity", moisture: "moisture-removal" };
      const share = limits[`startup.${what}ShareMin`];
      return evaluation.findings.startup_record
        .filter(({ ruleId }) => ruleId === `startup.${rule[what]}`)
        .flatMap(({ figures }) => figures.filter(({ label }) => label === "Expected"))
        .map(({ value }) =>
          figure(value * share, what === "moisture" ? 1 : 0, what === "moisture" ? "lb/h" : "Btu/h"),
        );
    }),
    figure(limits["refrigerant.stabilizeMinutes"], 0, "min"),
    figure(limits["refrigerant.evacuationMicrons"], 0, "microns"),
    figure(limits["airflow.goodPct"], 0, "%"),
  ];
}

/** The design airflow before it is rounded, which tolerances are taken of. */
function results({ results: { designCfm } }: PacketParts["evaluation"]): number | null {
  return designCfm.known ? designCfm.value : null;
}

/** Pounds of water a gallon, at room temperature (62.37 lb/ft³ ÷ 7.4805 gal/ft³). */
const LB_PER_GALLON = 62.37 / 7.4805;

/** What the catalog says of the model and of the instruments. */
function listed({ context, evaluation }: PacketParts): readonly string[] {
  const moisture = evaluation.ledger.find(({ key }) => key === "moisture")?.cells.measured.value;
  return [
    ...(context.model ? [figure(context.model.nominalTons, 1, "tons")] : []),
    // Water's density is known to the temperature of the tap: a ten-thousandth may fall on the other side of a half.
    ...(typeof moisture === "number"
      ? [0.9999, 1.0001].map((near) => figure((near * moisture) / LB_PER_GALLON, 2, "gal/h"))
      : []),
    ...context.instruments.flatMap(({ accuracy }) =>
      accuracy.flatMap(({ plusMinus, percentOfReading, unit }) => [
        `${plusMinus} ${unit}`,
        `${percentOfReading} %`,
      ]),
    ),
  ];
}

/** What the log shows, by its summary and its readings. */
function logged({ context, log }: PacketParts): readonly string[] {
  const { log: summary } = context;
  const humidities = log.points.flatMap(({ relativeHumidityPercent }) => relativeHumidityPercent ?? []);
  const ends = humidities.length === 0 ? [] : [Math.min(...humidities), Math.max(...humidities)];
  if (summary === null) return [];
  return [
    ...ends.map((value) => figure(value, 0, "%")),
    figure(summary.limitPct, 0, "%"),
    figure(Math.min(50, summary.limitPct), 0, "%"),
    figure(summary.loggedHours, 0, "h"),
    figure(summary.hoursAboveLimit, 0, "h"),
    figure((100 * summary.dryHours) / summary.loggedHours, 1, "%"),
    ...(summary.meanDewPointF === null ? [] : [figure(summary.meanDewPointF, 1, "°F")]),
    ...(summary.cyclesPerHour === null ? [] : [figure(summary.cyclesPerHour, 1, "per h")]),
  ];
}

/** What the forecast in force says, and what it assumes. */
function forecast({ context, forecast: whole }: PacketParts): readonly string[] {
  const kept = context.forecast;
  const ranges = (all: readonly (ForecastRange | null)[], decimals: number, unit: string) =>
    all.flatMap((range) =>
      range === null ? [] : [range.low, range.central, range.high].map((one) => figure(one, decimals, unit)),
    );
  const year = kept?.figures;
  const hours = year ? year.ranges.dryHours.central + year.ranges.hoursAboveLimit.central : 0;
  const { lived } = context;
  return [
    ...(kept === null || year === undefined
      ? []
      : [
          figure(kept.humidityLimitPct, 0, "%"),
          figure(hours, 0, "h"),
          figure((context.limits["logs.dryShareMinPct"] / 100) * hours, 0, "h"),
          ...ranges([...Object.values(year.ranges), year.worstWeekHours], 0, "h"),
          ...ranges([year.meanRunMin], 0, "min"),
          ...ranges([year.kwh], 0, "kWh"),
        ]),
    ...(whole?.result.houseAssumptions ?? [])
      .concat()
      .flatMap(({ value, unit, why }) => [
        ...[0, 1].map((decimals) => figure(value, decimals, unit)),
        ...quantitiesIn(why),
      ]),
    ...(whole?.result.systemAssumptions ?? []).flatMap(({ value, unit, why, label }) => [
      ...[0, 1, 3].map((decimals) => figure(value, decimals, unit)),
      ...quantitiesIn(`${label} ; ${why}`),
    ]),
    ...(lived === null
      ? []
      : [
          figure(lived.hours, 0, "h"),
          figure(lived.lived.hoursAboveLimit, 0, "h"),
          figure(lived.lived.meanRhPct, 1, "%"),
          figure(lived.lived.runHours ?? 0, 0, "h"),
          ...[lived.forecast, lived.fitted].flatMap((span) => [
            ...ranges([span?.hoursAboveLimit ?? null, span?.runHours ?? null], 0, "h"),
            ...ranges([span?.meanRhPct ?? null], 1, "%"),
          ]),
          ...lived.months.flatMap((month) => [
            figure(month.hours, 0, "h"),
            figure(month.lived, 0, "h"),
            ...ranges([month.forecast, month.fitted], 0, "h"),
          ]),
          ...explanations(lived).flatMap(quantitiesIn),
          ...lived.fitNotes.flatMap(quantitiesIn),
        ]),
  ];
}

/** The capacity map, and what the screens say below the same pictures. */
function pictured(parts: PacketParts): readonly string[] {
  const { capacityMap: map } = parts.evaluation.results;
  return [
    ...(map.known ? map.value.cells : []).flatMap((cell) => [
      ...(cell.airflowCfm === null ? [] : [figure(cell.airflowCfm, 0, "cfm")]),
      ...(cell.moistureLbPerH === null ? [] : [figure(cell.moistureLbPerH, 1, "lb/h")]),
      ...(cell.leavingDewPointF === null ? [] : [figure(cell.leavingDewPointF, 1, "°F")]),
      ...quantitiesIn(`${cell.airflowSetting} ; ${cell.capacitySetting} ; ${cell.reason}`),
    ]),
    ...STAGES.flatMap((stage) => stagePictures(parts, stage)).flatMap((block) =>
      block.kind === "chart"
        ? [block.chart.textAlternative, ...block.chart.labels.map(({ text }) => text)].flatMap(quantitiesIn)
        : [],
    ),
  ];
}

/** Every quantity that a packet of these parts may print; nothing else has a place in it. */
export function knownQuantities(parts: PacketParts): ReadonlySet<string> {
  const sources = [ledgerQuantities, entered, found, aimed, listed, logged, forecast, pictured];
  return new Set(sources.flatMap((source) => source(parts)));
}

/** Quantities of a packet's text that nothing in its records accounts for. */
export function strayQuantities(text: string, parts: PacketParts): readonly string[] {
  const { model } = parts.context;
  // `36 V` in a model's name is no voltage.
  const named = model === null ? text : text.replaceAll(model.name, "");
  const known = knownQuantities(parts);
  return [...new Set(quantitiesIn(named))].filter((one) => !known.has(one));
}
