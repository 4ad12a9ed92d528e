import type { ControlModel } from "@/lib/domain/catalog";
import type { KeptForecastWhole } from "@/lib/domain/forecast";
import type { FitPicture } from "@/lib/domain/forecast-lived/kept";
import type { StageRecord } from "@/lib/domain/jobs";
import type { StageKey } from "@/lib/domain/stages";
import type { LabelledText, PacketBrand } from "@/lib/reports/homeowner/view";
import type { PrintedPhoto, SheetView } from "@/lib/reports/sheet/view";
import type { JobView } from "../job-view";
import type { LogPanelView } from "../log-view";

export type PacketPaper = "letter" | "a4";
export type PacketLanguage = "en" | "es";

/** What the day, number and forerunner of a packet say; blank while its content is compared. */
export type PacketStamp = {
  readonly documentId: string;
  readonly revisionNote: string;
  readonly createdOn: string;
};

/** Everything the packets of a job are made of. */
export type PacketParts = JobView &
  PacketStamp & {
    readonly brand: PacketBrand;
    /** The company's own clock: every day a packet names is a day there. */
    readonly timeZone: string;
    readonly paper: PacketPaper;
    readonly log: LogPanelView;
    readonly controls: ControlModel | null;
    /** Every revision of every stage, newest first. */
    readonly revisions: Readonly<Record<StageKey, readonly StageRecord[]>>;
    readonly photos: readonly PrintedPhoto[];
    /** The forecast in force with everything it assumed; only where a packet prints that. */
    readonly forecast: KeptForecastWhole | null;
    /** Dew points of the house as lived, assumed and fitted, once the forecast was held against its log. */
    readonly fitPicture: FitPicture | null;
  };

/** The head that every working paper of a job shares. */
export function sheetHead(parts: PacketParts, title: string): Omit<SheetView, "sections" | "dense"> {
  const { job, context, brand, paper, documentId, revisionNote, createdOn } = parts;
  const facts: readonly LabelledText[] = [
    { label: "Job", text: String(job.number) },
    {
      label: "Equipment",
      text: context.model ? `${context.model.maker} ${context.model.name}` : "not selected",
    },
    { label: "Startup due", text: job.startupDue ?? "no date" },
    { label: "Assigned", text: job.techs.map((tech) => tech.name).join(", ") || "nobody yet" },
  ];
  return {
    paper,
    documentId,
    revisionNote,
    createdOn,
    brand,
    title,
    name: job.customer.name,
    nameLines: [`${job.home.addressLine}, ${job.home.city}, ${job.home.region} ${job.home.postalCode}`],
    facts,
  };
}
