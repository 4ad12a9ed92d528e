import { Text, View } from "@react-pdf/renderer";
import type { ReactNode } from "react";
import { PAGE, small, strong } from "../look";
import { inOutline } from "./in-outline";
import { tagged } from "./tags";

type SectionProps = {
  readonly number: number;
  readonly title: string;
  readonly accent: string;
  readonly lead?: string | undefined;
  readonly dense?: boolean;
  /** Points that have to fit below the heading on the same page: more where the first thing cannot be broken. */
  readonly ahead?: number;
  /** Points above the heading. */
  readonly above?: number;
  readonly onNewPage?: boolean;
  readonly children: ReactNode;
};

/**
 * A numbered part of a packet: the number stands in the margin, left of the ledger rule. Heading and content are
 * no children of one box: the library moves a heading to the next page only when something stands above it there.
 */
export function Section(props: SectionProps) {
  const { number, title, accent, lead, children, dense = false, ahead = dense ? 30 : 140 } = props;
  const { above = dense ? 4 : 22, onNewPage = false } = props;
  return (
    <>
      <View
        wrap={false}
        break={onNewPage}
        minPresenceAhead={ahead}
        style={{ marginTop: above }}
        {...inOutline(title)}
      >
        <Text {...tagged("Artifact")} style={{ ...NUMBER, color: accent }}>
          {String(number)}
        </Text>
        <Text {...tagged("H2")} style={{ ...strong, fontSize: dense ? 10.5 : 14, lineHeight: 1.25 }}>
          {title}
        </Text>
        {lead !== undefined && <Text style={{ ...small, marginTop: 3, maxWidth: 400 }}>{lead}</Text>}
      </View>
      <View style={{ marginTop: dense ? 3 : 8, rowGap: dense ? 3 : 8 }}>{children}</View>
    </>
  );
}

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
