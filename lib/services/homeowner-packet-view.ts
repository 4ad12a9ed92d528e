import { humidityChart } from "@/lib/charts/humidity-chart";
import { numberText } from "@/lib/charts/number-text";
import { COMPRESSOR_KIND_NAMES } from "@/lib/domain/catalog";
import type { LedgerCell, LedgerLine } from "@/lib/domain/ledger";
import { controlSetupFields } from "@/lib/domain/stages/control-setup";
import type { JudgedFigure } from "@/lib/reports/figures";
import type { HomeownerPacketView, PacketBrand, PrintedSetting } from "@/lib/reports/homeowner/view";
import { CAUTIONS, HOW_TO_RUN, WHEN_TO_CALL, WHY } from "./homeowner-packet-words";
import type { JobView } from "./job-view";
import type { LogPanelView } from "./log-view";
import { ledgerGroups, measuredGroups } from "./printed-ledger";

/** Width of the chart on the page, in the chart's own units. */
const CHART_WIDTH = 520;

type Parts = JobView & {
  readonly brand: PacketBrand;
  readonly log: LogPanelView;
  readonly documentId: string;
  readonly revisionNote: string;
  readonly createdOn: string;
};

/** Everything the homeowner packet prints, from the job's records: finished words and numbers. */
export function homeownerPacketView(parts: Parts): HomeownerPacketView {
  const { job, evaluation, context } = parts;
  const { load_summary: load, equipment_selection: selection, control_setup: controls } = context.inputs;
  const { model } = context;
  return {
    language: "en",
    paper: "letter",
    documentId: parts.documentId,
    revisionNote: parts.revisionNote,
    createdOn: parts.createdOn,
    brand: parts.brand,
    job: {
      number: String(job.number),
      customerName: job.customer.name,
      addressLines: [job.home.addressLine, `${job.home.city}, ${job.home.region} ${job.home.postalCode}`],
      systemLine: model ? `${model.maker} ${model.name}` : "Equipment not selected yet",
      dates: [
        { label: "Startup", text: parts.records.startup_record?.signedAt?.slice(0, 10) ?? "not signed yet" },
        { label: "Humidity review", text: job.reviewDue ?? "no date yet" },
      ],
    },
    promise: {
      words:
        "A house that is cool and dry: the temperature you set, at a humidity that people and furnishings keep well in.",
      setpoint: {
        label: "Temperature",
        value: controls.coolingSetpointF === null ? null : numberText(controls.coolingSetpointF, 0),
        unit: "°F",
      },
      humidityLimit: {
        label: "Humidity, at most",
        value: load.humidityLimitPct === null ? null : numberText(load.humidityLimitPct, 0),
        unit: "%",
      },
    },
    inShort: evaluation.ledger.flatMap((line) => {
      const sentence = SENTENCES[line.key]?.(line);
      return sentence && line.verdict ? [{ sentence, verdict: line.verdict }] : [];
    }),
    installed: {
      equipment: model
        ? [
            { label: "Equipment", text: `${model.maker} ${model.name}` },
            { label: "Model number", text: model.modelNumber || "not given" },
            { label: "Compressor", text: COMPRESSOR_KIND_NAMES[model.compressorKind] },
            { label: "Nominal size", text: `${numberText(model.nominalTons, 1)} tons` },
            { label: "Refrigerant", text: model.refrigerant },
          ]
        : [],
      capacitySetting: { label: "Set to", text: selection.capacitySetting ?? "not decided" },
      demoData: model?.demoData ?? false,
    },
    howItIsSet: settings(parts),
    measured: measuredGroups(evaluation.ledger),
    ledger: ledgerGroups(evaluation.ledger),
    lived: lived(parts),
    howToRun: HOW_TO_RUN,
    whenToCall: WHEN_TO_CALL,
    cautions: CAUTIONS,
  };
}

const text = (line: LedgerLine, cell: LedgerCell) =>
  typeof cell.value === "number" ? `${numberText(cell.value, line.decimals)} ${line.unit}`.trim() : "";

const SENTENCES: Readonly<Record<string, (line: LedgerLine) => string | null>> = {
  total: (line) =>
    line.cells.measured.value === null
      ? null
      : `The system gave ${text(line, line.cells.measured)} of cooling when it was measured.`,
  moisture: (line) =>
    line.cells.measured.value === null
      ? null
      : `It took ${text(line, line.cells.measured)} of water out of the air.`,
  "airflow-full": (line) =>
    line.cells.measured.value === null
      ? null
      : `The fan moved ${text(line, line.cells.measured)} through the ducts.`,
  "dry-hours": (line) =>
    line.cells.lived.value === null
      ? null
      : `The house spent ${text(line, line.cells.lived)} at or below its humidity limit (${line.cells.lived.note}).`,
};

function settings({ context }: Parts): readonly PrintedSetting[] {
  const { control_setup: controls, airflow_setup: airflow } = context.inputs;
  const entries = Object.entries(WHY).map(([key, why]): PrintedSetting => {
    const field = controlSetupFields[key as keyof typeof controlSetupFields];
    const value = controls[key as keyof typeof controls];
    return { name: field.label, setTo: valueWords(value, field.kind === "number" ? field.unit : ""), why };
  });
  return [
    {
      name: "Airflow setting, full capacity",
      setTo: airflow.secondStageAirflowSetting,
      why: "Decides how cold the coil is, and so how much it dries.",
    },
    {
      name: "Airflow setting, first stage",
      setTo: airflow.firstStageAirflowSetting,
      why: "Less air over the coil for most of the hours dries more.",
    },
    ...entries,
  ];
}

function valueWords(value: string | number | boolean | null, unit: string): string | null {
  if (value === null) return null;
  if (typeof value === "boolean") return value ? "yes" : "no";
  return `${value} ${unit}`.trim();
}

function lived({ log, context, evaluation }: Parts): HomeownerPacketView["lived"] {
  const { log: summary } = context;
  if (!summary || log.limitPct === null) return null;
  const { verdict } = evaluation.ledger.find((line) => line.key === "dry-hours") ?? { verdict: null };
  const figure = (label: string, value: number, unit: string, decimals: number): JudgedFigure => ({
    label,
    value: numberText(value, decimals),
    unit,
    verdict: null,
    aim: null,
    plainWords: null,
    strip: null,
  });
  return {
    period: `From ${summary.firstAt.slice(0, 10)} to ${summary.lastAt.slice(0, 10)}`,
    figures: [
      {
        ...figure("At or below the limit", summary.dryHours, "h", 0),
        verdict,
        aim: `of ${numberText(summary.loggedHours, 0)} h logged`,
      },
      figure("Time from 50 to 60 %", summary.share50To60Pct, "%", 0),
      figure("Mean humidity", summary.meanRhPct, "%", 0),
    ],
    chart: humidityChart({
      readings: log.points,
      band: { lowPercent: 50, highPercent: log.limitPct },
      gapAfterMinutes: 60,
      timeZone: log.timeZone,
      width: CHART_WIDTH,
    }),
    words: "Read from the log of a sensor in the house.",
  };
}
