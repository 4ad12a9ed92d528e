import type { Tone } from "./geometry";

/** Each tone as ink on paper, for drawings outside the browser. The light theme of `app/globals.css` has the same. */
export const PAPER_PALETTE: Readonly<Record<Tone, string>> = {
  ink: "#1c1a16",
  muted: "#5b5446",
  rule: "#ded6c4",
  accent: "#1f4f7a",
  a: "#1b5f8c",
  b: "#a8480f",
  c: "#5c6b12",
  d: "#8a2f6b",
  meets: "#0c6355",
  short: "#a82812",
  unsure: "#5743a8",
};
