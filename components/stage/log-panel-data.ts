/** An imported log as the panel shows it. */
export type LogImportView = {
  readonly sourceName: string;
  readonly fileName: string;
  readonly rowsRead: number;
  readonly rowsKept: number;
  readonly problems: readonly { readonly row: number; readonly reason: string }[];
  readonly importedBy: string;
  readonly summary: { readonly firstAt: string; readonly lastAt: string };
};

export type LogPanelData = {
  readonly jobId: string;
  readonly shown: LogImportView | null;
  readonly points: readonly {
    readonly atMs: number;
    readonly relativeHumidityPercent: number | null;
    readonly dewPointF: number | null;
  }[];
  readonly limitPct: number | null;
  readonly timeZone: string;
  readonly mayUpload: boolean;
};
