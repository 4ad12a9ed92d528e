import type { Verdict } from "@/lib/engineering/findings";
import { cx } from "../ui/cx";

/**
 * Each shape shows where the reading lies against its limit, the line across the middle: a ball that stands
 * on it, a wedge that hangs below it, a lozenge that straddles it half full, and a broken line with nothing there.
 */
const SHAPES = {
  meets: (
    <>
      <path d="M2 15.5h16" stroke="currentColor" strokeWidth="2" strokeLinecap="round" />
      <circle cx="10" cy="8" r="5.6" fill="currentColor" />
    </>
  ),
  "falls short": (
    <>
      <path d="M2 6.5h16" stroke="currentColor" strokeWidth="2" strokeLinecap="round" />
      <path d="M3.6 8.6h12.8L10 18.6z" fill="currentColor" />
    </>
  ),
  "can't tell": (
    <>
      <path d="M1 10h18" stroke="currentColor" strokeWidth="2" strokeLinecap="round" />
      <path d="M10 2.6 15.6 10H4.4z" fill="currentColor" />
      <path
        d="M4.4 10h11.2L10 17.4z"
        fill="none"
        stroke="currentColor"
        strokeWidth="1.6"
        strokeLinejoin="round"
      />
    </>
  ),
  "not measured": (
    <>
      <path d="M1.5 10h3.2M15.3 10h3.2" stroke="currentColor" strokeWidth="2" strokeLinecap="round" />
      <circle
        cx="10"
        cy="10"
        r="4.2"
        fill="none"
        stroke="currentColor"
        strokeWidth="1.6"
        strokeDasharray="2.2 2.2"
      />
    </>
  ),
  information: (
    <>
      <path d="M3 6h14M3 10h14M3 14h9" stroke="currentColor" strokeWidth="1.6" strokeLinecap="round" />
    </>
  ),
} as const;

const LOOK = {
  meets: { word: "Meets", ink: "text-meets", tint: "bg-meets-tint" },
  "falls short": { word: "Falls short", ink: "text-short", tint: "bg-short-tint" },
  "can't tell": { word: "Can’t tell", ink: "text-unsure", tint: "bg-unsure-tint" },
  "not measured": { word: "Not measured", ink: "text-unmeasured", tint: "bg-unmeasured-tint" },
  information: { word: "For information", ink: "text-muted", tint: "bg-transparent" },
} as const;

export type VerdictMarkProps = {
  /** `null`: for information, no verdict. */
  readonly verdict: Verdict | null;
  /** `tag` has a tinted ground, `plain` has none, `shape` leaves the word to screen readers. */
  readonly look?: "tag" | "plain" | "shape";
  readonly className?: string;
};

/** A verdict: word, shape and colour together. */
export function VerdictMark({ verdict, look = "tag", className }: VerdictMarkProps) {
  const kind = verdict ?? "information";
  const { word, ink, tint } = LOOK[kind];
  return (
    <span
      className={cx(
        "inline-flex items-center gap-1 text-xs font-semibold whitespace-nowrap",
        ink,
        look === "tag" && cx("rounded-sm px-1.5 py-0.5", tint),
        className,
      )}
    >
      <svg aria-hidden="true" viewBox="0 0 20 20" className="size-4.5 shrink-0">
        {SHAPES[kind]}
      </svg>
      <span className={cx(look === "shape" && "sr-only")}>{word}</span>
    </span>
  );
}

/** The colour that goes with a verdict, as a border class, for an edge beside its word. */
export function verdictEdge(verdict: Verdict | null): string {
  switch (verdict) {
    case "meets":
      return "border-l-meets";
    case "falls short":
      return "border-l-short";
    case "can't tell":
      return "border-l-unsure";
    case "not measured":
      return "border-l-unmeasured";
    case null:
      return "border-l-rule";
  }
}
