import type { FitPicture, LivedInForce } from "@/lib/domain/forecast-lived/kept";
import type { Finding } from "@/lib/engineering/findings";

/** What the section shows. */
export type ForecastLivedData = {
  readonly jobId: string;
  readonly importId: string | null;
  readonly lived: LivedInForce | null;
  readonly findings: readonly Finding[];
  readonly explanations: readonly string[];
  readonly carrying: string | null;
  readonly picture: FitPicture | null;
  readonly timeZone: string;
  readonly missing: readonly { readonly text: string; readonly href: string | null }[];
  readonly working: { readonly done: number; readonly total: number | null } | null;
  readonly mayHold: boolean;
};

export type HoldAnswer = { readonly ok: true } | { readonly ok: false; readonly message: string };
