import { Text, View } from "@react-pdf/renderer";
import { Children, type ReactNode } from "react";
import { PAGE, small, strong } from "../look";
import { inOutline } from "./in-outline";
import { tagged } from "./tags";

type SectionProps = {
  readonly number: number;
  readonly title: string;
  readonly accent: string;
  readonly lead?: string | undefined;
  readonly dense?: boolean;
  /** Points above the heading. */
  readonly above?: number;
  readonly children: ReactNode;
};

/**
 * A numbered part of a packet: the number stands in the margin, left of the ledger rule. All its parts stand
 * in the page's own flow: in a box of their own, the library would leave the heading behind at the foot of a page.
 */
export function Section(props: SectionProps) {
  const { number, title, accent, lead, children, dense = false } = props;
  const gap = dense ? 3 : 8;
  const { above = dense ? 4 : 22 } = props;
  return (
    <>
      {/* Room that ends with the page: a heading at the top of the next one has none above it. */}
      {above > 0 && <View style={{ height: above }} />}
      <View wrap={false} minPresenceAhead={AHEAD} style={{ marginBottom: gap }} {...inOutline(title)}>
        <Text {...tagged("Artifact")} style={{ ...NUMBER, color: accent }}>
          {String(number)}
        </Text>
        <Text {...tagged("H2")} style={{ ...strong, fontSize: dense ? 10.5 : 14, lineHeight: 1.25 }}>
          {title}
        </Text>
        {lead !== undefined && <Text style={{ ...small, marginTop: 3, maxWidth: 400 }}>{lead}</Text>}
      </View>
      {Children.toArray(children).flatMap((child, at) =>
        // biome-ignore lint/suspicious/noArrayIndexKey: the parts of one printed section never change places
        at === 0 ? [child] : [<View key={`gap ${at}`} style={{ height: gap }} />, child],
      )}
    </>
  );
}

/** Points: two lines. What follows keeps its own first rows together; more would chain short sections. */
const AHEAD = 28;

const NUMBER = {
  ...strong,
  position: "absolute",
  top: 2.6,
  left: 28 - PAGE.paddingLeft,
  width: 16,
  textAlign: "right",
  fontSize: 10,
  lineHeight: 1.25,
} as const;
