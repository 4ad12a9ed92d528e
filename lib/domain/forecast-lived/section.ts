import type { Finding } from "@/lib/engineering/findings";
import type { FitPicture, LivedInForce } from "./kept";

/** The forecast beside what was lived, as the humidity review shows it. */
export type ForecastLivedView = {
  readonly jobId: string;
  /** The log it is held against; `null` without any. */
  readonly importId: string | null;
  readonly lived: LivedInForce | null;
  readonly findings: readonly Finding[];
  readonly explanations: readonly string[];
  /** The assumption that carries the difference most. */
  readonly carrying: string | null;
  readonly picture: FitPicture | null;
  readonly timeZone: string;
  /** What the records still lack, with the page that has it. */
  readonly missing: readonly { readonly text: string; readonly href: string | null }[];
  /** Work under way; `null` for none. */
  readonly working: { readonly done: number; readonly total: number | null } | null;
  readonly mayHold: boolean;
};
