import { accentContrast } from "@/lib/charts/accent-contrast";
import { PAPER_PALETTE } from "@/lib/charts/palette";
import { FAMILY, REGULAR, STRONG } from "./fonts";

/** Ink on white paper: the screens' light theme without its warm ground, which a printer would only waste. */
export const INK = PAPER_PALETTE.ink;
export const QUIET = PAPER_PALETTE.muted;
export const HAIRLINE = "#b8b1a3";
export const TINT = "#e7e2d7";

/** The company's colour where it can be read on paper, darkened if need be; ink where it is no colour at all. */
export function accentOnPaper(accentHex: string): string {
  return accentContrast(accentHex)?.onPaper.color ?? INK;
}

/** Black or white, whichever reads better on a ground that has been checked for paper. */
export function readableOn(ground: string): string {
  return accentContrast(ground)?.onPaper.text ?? "#ffffff";
}

export const PAGE = {
  fontFamily: FAMILY,
  fontWeight: REGULAR,
  // One letter, one shape: letters split from their marks or joined to `fi` would copy out of the file as other
  // letters, and the library counts them wrongly when it breaks lines.
  fontFeatureSettings: { ccmp: 0, liga: 0 },
  fontSize: 9.5,
  lineHeight: 1.42,
  color: INK,
  paddingTop: 30,
  paddingBottom: 24,
  paddingLeft: 70,
  paddingRight: 54,
} as const;

export const strong = { fontWeight: STRONG } as const;
export const small = { fontSize: 8, lineHeight: 1.38, color: QUIET } as const;
export const headText = { fontSize: 7.5, lineHeight: 1.3, color: QUIET, fontWeight: STRONG } as const;
export const row = { flexDirection: "row" } as const;
export const ruleBelow = { borderBottomWidth: 0.5, borderBottomColor: HAIRLINE } as const;
export const inkAbove = { borderTopWidth: 0.9, borderTopColor: INK } as const;
