import { Text, View } from "@react-pdf/renderer";
import type { ReactNode } from "react";
import { inkAbove, row, ruleBelow, small } from "../look";
import { keyed } from "./keyed";
import { type Tag, tagged } from "./tags";

/** Longer texts may break across pages: they might not fit on any single one. */
const LONGEST_WHOLE = 1_200;

export function staysWhole(texts: readonly string[]): boolean {
  return texts.join("").length <= LONGEST_WHOLE;
}

type RowProps = {
  /** The row's texts, by which it is judged whether it can stay whole. */
  readonly texts: readonly string[];
  /** `TR` in a table, `LI` in a list. */
  readonly tag?: Tag;
  /** Room above and below in points; less for tables of many short rows. */
  readonly pad?: number;
  readonly children: ReactNode;
};

/** One ruled row. It is never broken across pages unless it is too long for a page. */
export function RuledRow({ texts, tag = "TR", pad = 4.5, children }: RowProps) {
  return (
    <View
      wrap={!staysWhole(texts)}
      {...tagged(tag)}
      style={{ ...row, ...ruleBelow, gap: 10, paddingVertical: pad }}
    >
      {children}
    </View>
  );
}

/** The head of a table, printed again on every page the table continues on. */
export function TableHead({ children }: { readonly children: ReactNode }) {
  return (
    <View
      fixed
      {...tagged("HeadRow")}
      minPresenceAhead={40}
      style={{ ...row, ...inkAbove, ...ruleBelow, gap: 10, paddingTop: 3.5, paddingBottom: 3.5 }}
    >
      {children}
    </View>
  );
}

/** Paragraphs, one for each line of a text. */
export function Paragraphs({ text }: { readonly text: string }) {
  const lines = text.split(/\n+/).filter((line) => line.trim() !== "");
  return keyed(lines).map(({ key, item }) => (
    <Text key={key} style={{ marginBottom: 4 }}>
      {item}
    </Text>
  ));
}

/** A list whose entries carry a small mark, or their number. */
export function PlainList({
  items,
  numbered,
  ifNone,
}: {
  readonly items: readonly string[];
  readonly numbered: boolean;
  readonly ifNone: string;
}) {
  if (items.length === 0) return <Text style={small}>{ifNone}</Text>;
  return (
    <View {...tagged("L")}>
      {items.map((item, index) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: the entries of one printed list never change places
        <RuledRow key={index} texts={[item]} tag="LI">
          <Text style={{ ...small, width: 14, textAlign: "right", marginTop: 1 }}>
            {numbered ? String(index + 1) : "–"}
          </Text>
          <Text style={{ flex: 1 }}>{item}</Text>
        </RuledRow>
      ))}
    </View>
  );
}
