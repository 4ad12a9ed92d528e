import type { ChartGeometry } from "@/lib/charts/geometry";
import type { Verdict } from "@/lib/engineering/findings";
import type { JudgedFigure, PrintedFigure } from "../figures";

/** Everything the homeowner packet prints, finished: rounded, with units, in the packet's language. */
export type HomeownerPacketView = {
  readonly language: "en" | "es";
  readonly paper: "letter" | "a4";
  readonly documentId: string;
  /** For instance `Revision 2, replaces revision 1 of 2026-06-02`. Empty for a first revision without a note. */
  readonly revisionNote: string;
  /** `2026-07-31`: the day printed, and the file's creation date, so that the same view gives the same bytes. */
  readonly createdOn: string;
  /** Printed on every page of a copy for the record: that a newer packet has replaced this one. */
  readonly replacedNote?: string;
  readonly brand: PacketBrand;
  readonly job: PacketJob;
  readonly promise: PacketPromise;
  /** `null` while no forecast is kept with the job. */
  readonly forecast: PacketForecast | null;
  /** The answer in a few lines, for the cover. */
  readonly inShort: readonly JudgedSentence[];
  readonly installed: PacketInstalled;
  readonly howItIsSet: readonly PrintedSetting[];
  readonly measured: readonly MeasuredGroup[];
  readonly ledger: readonly LedgerGroup[];
  /** `null` until the house's own log has been reviewed. */
  readonly lived: PacketLived | null;
  readonly howToRun: readonly string[];
  /** What is warranted until when, when maintenance is due, and in whose words. */
  readonly terms: PacketTerms;
  readonly whenToCall: readonly string[];
  readonly cautions: readonly string[];
  /** The packet's own page on the web, with its address as a QR code; `null` without one. */
  readonly privatePage: PrivatePage | null;
};

export type PacketTerms = { readonly dates: readonly LabelledText[]; readonly words: readonly string[] };

export type PrivatePage = {
  readonly href: string;
  /** The day until which it opens. */
  readonly until: string;
  /** Dark squares as path data, one unit a square. */
  readonly qr: { readonly size: number; readonly d: string };
};

export type PacketBrand = {
  readonly companyName: string;
  /** A PNG from `cleanLogo`. */
  readonly logoPng: Uint8Array | null;
  /** `#rrggbb`; darkened until it can be read on paper. */
  readonly accentHex: string;
  readonly licenceLine: string;
  readonly contactLines: readonly string[];
  readonly coverWords: string;
  readonly closingWords: string;
  /** What warranty and maintenance cover, in the company's words; empty where it says nothing. */
  readonly termsWords: string;
  /** How the first page looks: open and ruled, or under a band of the company's colour. */
  readonly coverStyle: "ledger" | "band";
  /** What is promised from the startup on; `null`: nothing. */
  readonly terms: {
    readonly partsWarrantyYears: number | null;
    readonly laborWarrantyYears: number | null;
    readonly maintenanceMonths: number | null;
  };
};

export type LabelledText = { readonly label: string; readonly text: string };

export type PacketJob = {
  readonly number: string;
  readonly customerName: string;
  readonly addressLines: readonly string[];
  readonly systemLine: string;
  /** Installed, started up, next maintenance, warranty ends … */
  readonly dates: readonly LabelledText[];
};

export type PacketPromise = {
  readonly words: string;
  readonly setpoint: PrintedFigure;
  readonly humidityLimit: PrintedFigure;
};

/** What a typical year is forecast to be like, in ranges. */
export type PacketForecast = {
  /** The forecast, or why there is none that fits, in a sentence. */
  readonly sentence: string;
  /** What it rests on. */
  readonly words: string;
  /** Empty, and without a chart, when the design has changed since. */
  readonly figures: readonly JudgedFigure[];
  readonly chart: ChartGeometry | null;
};

export type JudgedSentence = { readonly sentence: string; readonly verdict: Verdict };

export type PacketInstalled = {
  readonly equipment: readonly LabelledText[];
  readonly capacitySetting: LabelledText;
  /** True when the catalog entry is marked demo data. */
  readonly demoData: boolean;
};

/** One setting as left, and why. `null`: not recorded. */
export type PrintedSetting = {
  readonly name: string;
  readonly setTo: string | null;
  readonly why: string;
};

export type MeasuredGroup = { readonly heading: string; readonly figures: readonly JudgedFigure[] };

export type LedgerGroup = { readonly heading: string; readonly lines: readonly PrintedLedgerLine[] };

/** One line of the ledger. A cell holds number and unit, or words; `null` prints as missing. */
export type PrintedLedgerLine = {
  readonly label: string;
  readonly designed: LedgerCell | null;
  readonly set: LedgerCell | null;
  readonly measured: LedgerCell | null;
  readonly lived: LedgerCell | null;
  readonly verdict: Verdict | null;
};

export type LedgerCell = {
  readonly value: string;
  readonly unit: string;
  readonly uncertainty?: string;
  /** What the number is, for instance `at most`, or its range. */
  readonly note?: string;
};

export type PacketLived = {
  /** For instance `From 2026-06-03 to 2026-08-31, 12,960 readings`. */
  readonly period: string;
  readonly figures: readonly JudgedFigure[];
  readonly chart: ChartGeometry | null;
  readonly words: string;
};
