import type { Finding } from "@/lib/engineering/findings";
import type { LikelyCause, LoadLine, LogPictures, RunLength, TradePicture } from "@/lib/engineering/logs";
import type { LogWindowData } from "./zoom-chart";

/** An imported file as the review shows it. */
export type LogImportData = {
  readonly id: string;
  readonly sourceName: string;
  readonly fileName: string;
  readonly rowsRead: number;
  readonly rowsKept: number;
  /** How many remarks on rows there are; the first of them follow. Row 0 stands for the file as a whole. */
  readonly remarkCount: number;
  readonly problems: readonly { readonly row: number; readonly reason: string }[];
  readonly importedBy: string;
  readonly firstAt: string;
  readonly lastAt: string;
  /** Null for a weather station. */
  readonly summary: {
    readonly firstAt: string;
    readonly lastAt: string;
    readonly outdoorFrom: string;
  } | null;
};

/** A logger whose columns are remembered. */
export type LogSourceData = {
  readonly name: string;
  readonly headerFingerprint: string;
  readonly mapping: unknown;
  readonly timeZone: string;
};

export type LogReviewData = {
  readonly jobId: string;
  readonly imports: readonly LogImportData[];
  readonly shown: LogImportData | null;
  readonly isChosen: boolean;
  readonly outdoors: {
    readonly from: string;
    readonly typical: {
      readonly name: string;
      readonly meanF: number;
      readonly meanDewPointF: number;
    } | null;
  } | null;
  readonly window: LogWindowData | null;
  readonly pictures: LogPictures | null;
  readonly loadLine: LoadLine | null;
  readonly design: { readonly outdoorF: number; readonly sensibleBtuh: number } | null;
  readonly runLengths: readonly RunLength[];
  readonly causes: readonly LikelyCause[];
  /** What stands where no cause is named. */
  readonly withoutCause: string;
  readonly cannotTell: readonly Finding[];
  readonly tradePicture: TradePicture | null;
  readonly limitPct: number | null;
  readonly timeZone: string;
  readonly sources: readonly LogSourceData[];
  readonly mayUpload: boolean;
};
