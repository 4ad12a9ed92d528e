import { Circle, Path, Svg, Text, View } from "@react-pdf/renderer";
import { PAPER_PALETTE } from "@/lib/charts/palette";
import type { Verdict } from "@/lib/engineering/findings";
import { row, small, strong } from "../look";
import type { HomeownerWords } from "../words";

export const VERDICT_COLORS: Readonly<Record<Verdict, string>> = {
  meets: PAPER_PALETTE.meets,
  "falls short": PAPER_PALETTE.short,
  "can't tell": PAPER_PALETTE.unsure,
  "not measured": PAPER_PALETTE.muted,
};

/** A verdict as word, shape and colour. */
export function VerdictMark({ verdict, word }: { readonly verdict: Verdict; readonly word: string }) {
  return (
    <View style={{ ...row, alignItems: "flex-start", gap: 4 }}>
      <VerdictShape verdict={verdict} />
      <Text style={{ ...strong, fontSize: 8, lineHeight: 1.38, color: VERDICT_COLORS[verdict], flex: 1 }}>
        {word}
      </Text>
    </View>
  );
}

/** A verdict, or that a figure is shown for information only. */
export function VerdictOrInformation({
  verdict,
  words,
}: {
  readonly verdict: Verdict | null;
  readonly words: HomeownerWords;
}) {
  if (verdict === null) return <Text style={small}>{words.forInformation}</Text>;
  return <VerdictMark verdict={verdict} word={words.verdicts[verdict]} />;
}

/**
 * The same shapes as on screen, told apart in black and white. The line is the limit: a dome stands on it, a
 * wedge hangs below it, a lozenge straddles it half full, and a broken line has nothing there.
 */
function VerdictShape({ verdict }: { readonly verdict: Verdict }) {
  const color = VERDICT_COLORS[verdict];
  const line = { stroke: color, strokeWidth: 2, strokeLinecap: "round", fill: "none" } as const;
  return (
    <Svg width={12} height={12} viewBox="0 0 20 20">
      {verdict === "meets" && (
        <>
          <Path d="M2 12.5h16" {...line} />
          <Path d="M4.2 11a5.8 7.2 0 0 1 11.6 0z" fill={color} />
        </>
      )}
      {verdict === "falls short" && (
        <>
          <Path d="M2 6.5h16" {...line} />
          <Path d="M3.6 8.6h12.8L10 18.6z" fill={color} />
        </>
      )}
      {verdict === "can't tell" && (
        <>
          <Path d="M1 10h18" {...line} />
          <Path d="M10 2.6L15.6 10H4.4z" fill={color} />
          <Path d="M4.4 10h11.2L10 17.4z" stroke={color} strokeWidth={1.6} fill="none" />
        </>
      )}
      {verdict === "not measured" && (
        <>
          <Path d="M1.5 10h3.2M15.3 10h3.2" {...line} />
          <Circle
            cx={10}
            cy={10}
            r={4.2}
            stroke={color}
            strokeWidth={1.6}
            strokeDasharray="2.2 2.2"
            fill="none"
          />
        </>
      )}
    </Svg>
  );
}
