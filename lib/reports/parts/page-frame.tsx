import { Text, View } from "@react-pdf/renderer";
import type { ReactNode } from "react";
import { HAIRLINE, INK, row, small, strong } from "../look";
import { tagged } from "./tags";

type FrameProps = {
  readonly accent: string;
  /** Left and right of the line that heads every page but the first. */
  readonly runningHead: { readonly left: string; readonly right: string };
  readonly foot: string;
  readonly page: string;
  readonly isFirst: boolean;
  /** Stands in place of the company's name at the head of every page. */
  readonly note?: string | undefined;
  /** A sheet of one page needs no room for a running head. */
  readonly dense?: boolean;
  /** The flow of the document on this page. */
  readonly children: ReactNode;
};

/** What stands on every page: the double ledger rule in the margin, the running head, the foot. */
export function PageFrame(props: FrameProps) {
  const { accent, runningHead, foot, page, isFirst, note, dense = false, children } = props;
  const isBare = dense && isFirst;
  return (
    <>
      <View style={{ ...RULE, left: 48, borderLeftColor: accent, borderLeftWidth: 1.2 }} />
      <View style={{ ...RULE, left: 51.6, borderLeftColor: accent, borderLeftWidth: 0.5 }} />
      <View
        {...tagged("Artifact")}
        style={{ ...row, height: isBare ? 2 : 34, justifyContent: "space-between" }}
      >
        <Text style={{ ...small, ...oneLine, ...(note === undefined ? {} : NOTE), maxWidth: 270 }}>
          {(isBare ? undefined : note) ?? (isFirst ? "" : runningHead.left)}
        </Text>
        <Text style={{ ...small, ...oneLine, maxWidth: 200 }}>{isFirst ? "" : runningHead.right}</Text>
      </View>
      <View style={{ flexGrow: 1, flexShrink: 1 }}>{children}</View>
      <View
        {...tagged("Artifact")}
        style={{ ...row, ...FOOT, marginTop: dense ? 4 : FOOT.marginTop, justifyContent: "space-between" }}
      >
        <Text style={{ ...small, ...oneLine, maxWidth: 380 }}>
          {/* The one sheet of a crew has no head to spare. */}
          {isBare && note !== undefined && <Text style={NOTE}>{`${note} `}</Text>}
          {foot}
        </Text>
        <Text style={small}>{page}</Text>
      </View>
    </>
  );
}

const oneLine = { maxLines: 1, textOverflow: "ellipsis" } as const;
const NOTE = { ...strong, color: INK } as const;
const RULE = { position: "absolute", top: 0, bottom: 0, width: 0 } as const;
const FOOT = {
  marginTop: 14,
  height: 18,
  borderTopWidth: 0.5,
  borderTopColor: HAIRLINE,
  paddingTop: 4,
} as const;
