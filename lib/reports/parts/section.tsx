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
  readonly children: ReactNode;
};

/** A numbered part of a packet: the number stands in the margin, left of the ledger rule. */
export function Section({
  number,
  title,
  accent,
  lead,
  dense = false,
  ahead = dense ? 30 : 140,
  children,
}: SectionProps) {
  return (
    <View style={{ rowGap: dense ? 3 : 8 }}>
      <View wrap={false} minPresenceAhead={ahead} {...inOutline(title)}>
        <Text {...tagged("Artifact")} style={{ ...NUMBER, color: accent }}>
          {String(number)}
        </Text>
        <Text {...tagged("H2")} style={{ ...strong, fontSize: dense ? 10.5 : 14, lineHeight: 1.25 }}>
          {title}
        </Text>
        {lead !== undefined && <Text style={{ ...small, marginTop: 3, maxWidth: 400 }}>{lead}</Text>}
      </View>
      {children}
    </View>
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
