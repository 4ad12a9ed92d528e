import { DateTime } from "luxon";
import { numberText } from "@/lib/charts/number-text";
import { isOfAbsentStage } from "@/lib/domain/absent-stage";
import { dayOf } from "@/lib/domain/days";
import { stageCount } from "@/lib/domain/evaluate/controls";
import type { LedgerCell, LedgerLine } from "@/lib/domain/ledger";
import type { PacketLanguage } from "@/lib/domain/packets";
import { controlSetupFields } from "@/lib/domain/stages/control-setup";
import type { HomeownerPacketView, LabelledText, PrintedSetting } from "@/lib/reports/homeowner/view";
import { forecastView } from "./homeowner-forecast";
import { livedView } from "./homeowner-lived";
import type { HomeownerTexts } from "./homeowner-text-types";
import { HOMEOWNER_TEXTS } from "./homeowner-texts";
import { measuredGroups } from "./measured-figures";
import { type PrintedLink, qrPath } from "./packet-code";
import type { PacketParts } from "./packet-views/parts";
import { homeownerLedger } from "./printed-ledger";

/** Everything the homeowner packet prints, from the job's records: finished words and numbers in one language. */
export function homeownerPacketView(
  parts: PacketParts,
  language: PacketLanguage,
  link: PrintedLink | null,
): HomeownerPacketView {
  const { job, evaluation, context } = parts;
  const { load_summary: load, control_setup: controls } = context.inputs;
  const { model } = context;
  const texts = HOMEOWNER_TEXTS[language];
  return {
    language,
    paper: parts.paper,
    documentId: parts.documentId,
    revisionNote: parts.revisionNote,
    createdOn: parts.createdOn,
    brand: parts.brand,
    job: {
      number: String(job.number),
      customerName: job.customer.name,
      addressLines: [job.home.addressLine, `${job.home.city}, ${job.home.region} ${job.home.postalCode}`],
      systemLine: model ? `${model.maker} ${model.name}` : texts.notSelected,
      dates: dates(parts, texts),
    },
    promise: {
      words: texts.promise,
      setpoint: {
        label: texts.temperature,
        value: controls.coolingSetpointF === null ? null : numberText(controls.coolingSetpointF, 0),
        unit: "°F",
      },
      humidityLimit: {
        label: texts.humidityAtMost,
        value: load.humidityLimitPct === null ? null : numberText(load.humidityLimitPct, 0),
        unit: "%",
      },
    },
    forecast: forecastView(parts, texts),
    inShort: evaluation.ledger.flatMap((line) => {
      const sentence = inShort(line, parts, texts);
      return sentence !== null && line.verdict ? [{ sentence, verdict: line.verdict }] : [];
    }),
    installed: installed(parts, texts),
    howItIsSet: settings(parts, texts),
    measured: measuredGroups(context, evaluation, texts),
    ledger: homeownerLedger(linesOf(parts), texts),
    lived: livedView(parts, texts),
    howToRun: texts.howToRun,
    terms: {
      dates: termDates(parts, texts),
      words: [parts.brand.termsWords, context.inputs.equipment_selection.warrantyWords ?? ""].filter(
        (words) => words.trim() !== "",
      ),
    },
    whenToCall: texts.whenToCall,
    cautions: texts.cautions,
    privatePage:
      link === null
        ? null
        : { href: link.href, until: link.expiresAt.toISOString().slice(0, 10), qr: qrPath(link.href) },
  };
}

function linesOf({ evaluation, context }: PacketParts): readonly LedgerLine[] {
  return evaluation.ledger.filter(({ key }) => !isOfAbsentStage(context, key));
}

/** Startup, review, and what is promised from the startup on. */
function dates(parts: PacketParts, texts: HomeownerTexts): readonly LabelledText[] {
  const { job } = parts;
  const startup = startedOn(parts);
  return [
    { label: texts.startup, text: startup ?? texts.notSigned },
    { label: texts.review, text: job.reviewDue ?? texts.noDate },
    ...termDates(parts, texts),
  ];
}

/** The day the startup was signed, at the company. */
function startedOn({ records, timeZone }: PacketParts): string | null {
  const signedAt = records.startup_record?.signedAt ?? null;
  return signedAt === null ? null : dayOf(signedAt, timeZone);
}

/** Terms of this job where its selection names them, else the company's own; 0 promises nothing. */
function termDates(parts: PacketParts, texts: HomeownerTexts): readonly LabelledText[] {
  const { brand, context } = parts;
  const startup = startedOn(parts);
  const selection = context.inputs.equipment_selection;
  const term = (key: keyof PacketParts["brand"]["terms"]) => (selection[key] ?? brand.terms[key]) || null;
  const after = (span: { readonly years?: number; readonly months?: number }, otherwise: string) =>
    startup === null
      ? otherwise
      : (DateTime.fromISO(startup, { zone: "utc" }).plus(span).toISODate() ?? otherwise);
  const yearsAfter = (label: string, years: number | null) =>
    years === null ? [] : [{ label, text: after({ years }, texts.afterStartup(years)) }];
  const maintenanceMonths = term("maintenanceMonths");
  return [
    ...(maintenanceMonths === null
      ? []
      : [
          {
            label: texts.maintenance,
            text: after({ months: maintenanceMonths }, texts.monthsAfterStartup(maintenanceMonths)),
          },
        ]),
    ...yearsAfter(texts.laborWarranty, term("laborWarrantyYears")),
    ...yearsAfter(texts.partsWarranty, term("partsWarrantyYears")),
  ];
}

function installed({ context }: PacketParts, texts: HomeownerTexts): HomeownerPacketView["installed"] {
  const { model } = context;
  const { capacitySetting } = context.inputs.equipment_selection;
  return {
    equipment: model
      ? [
          { label: texts.equipment, text: `${model.maker} ${model.name}` },
          { label: texts.modelNumber, text: model.modelNumber || texts.notGiven },
          { label: texts.compressor, text: texts.compressors[model.compressorKind] ?? model.compressorKind },
          { label: texts.nominalSize, text: `${numberText(model.nominalTons, 1)} ${texts.tons}` },
          { label: texts.refrigerant, text: model.refrigerant },
        ]
      : [],
    capacitySetting: { label: texts.setTo, text: sizeWords(capacitySetting, texts) ?? texts.notDecided },
    demoData: model?.demoData ?? false,
  };
}

/** A capacity setting that is a size in the catalog's words. */
function sizeWords(setting: string | null, { tons }: HomeownerTexts): string | null {
  return setting?.replace(/(?<=\d )tons?$/, tons) ?? null;
}

function settings({ context }: PacketParts, texts: HomeownerTexts): readonly PrintedSetting[] {
  const { control_setup: controls, airflow_setup: airflow } = context.inputs;
  const values: Readonly<Record<string, string | number | boolean | null>> = { ...airflow, ...controls };
  const whys = Object.entries(texts.why).filter(([key]) => !isOfAbsentStage(context, key));
  return whys.map(([key, why]) => {
    const oneStage = stageCount(context) === 1 ? texts.oneStage[key] : undefined;
    const field =
      key in controlSetupFields ? controlSetupFields[key as keyof typeof controlSetupFields] : null;
    const unit = field?.kind === "number" ? field.unit : "";
    return {
      name: oneStage?.name ?? texts.settings[key] ?? field?.label ?? key,
      setTo: valueWords(values[key] ?? null, unit, texts),
      why: oneStage?.why ?? why,
    };
  });
}

function valueWords(
  value: string | number | boolean | null,
  unit: string,
  texts: HomeownerTexts,
): string | null {
  if (value === null) return null;
  if (typeof value === "boolean") return value ? texts.yes : texts.no;
  if (typeof value === "string") return texts.values[value] ?? value;
  return `${value} ${unit}`.trim();
}

/** The answer on one line of the ledger in a sentence, for the cover. */
function inShort(line: LedgerLine, { context }: PacketParts, texts: HomeownerTexts): string | null {
  const { measured, lived } = line.cells;
  const said = (cell: LedgerCell, sentence: (figure: string) => string) =>
    typeof cell.value === "number"
      ? sentence(`${numberText(cell.value, line.decimals)} ${line.unit}`.trim())
      : null;
  if (line.key === "total") return said(measured, texts.gaveCooling);
  if (line.key === "moisture") return said(measured, texts.tookWater);
  if (line.key === "airflow-full") return said(measured, texts.movedAir);
  const { log } = context;
  if (line.key !== "dry-hours" || log === null || log.loggedHours <= 0) return null;
  const share = numberText((100 * log.dryHours) / log.loggedHours, 1);
  return said(lived, (figure) => texts.spentDry(figure, share, numberText(log.loggedHours, 0)));
}
