import { Text, View } from "@react-pdf/renderer";
import { Fragment, type ReactNode } from "react";
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

/** A row with the texts by which it is judged how much of it may stay whole. */
export type Row = { readonly texts: readonly string[]; readonly row: ReactNode };

/** So many rows at a table's begin, and at its end, never part. */
const TOGETHER = 2;

/**
 * The rows of a table or list in blocks: the first two stand together below their head, and the last two on their
 * page, so that no head is left without rows and no row stands alone on a page.
 */
export function Rows({
  rows,
  ruleAbove = false,
}: {
  readonly rows: readonly Row[];
  /** A rule instead of a head. It belongs to the first rows: one of the table's own would stay behind with a heading. */
  readonly ruleAbove?: boolean;
}) {
  const first = rows.slice(0, rows.length <= TOGETHER + 1 ? undefined : TOGETHER);
  const last = rows.slice(Math.max(first.length, rows.length - TOGETHER));
  const between = rows.slice(first.length, rows.length - last.length);
  return (
    <>
      <Block rows={first} isFirst ruleAbove={ruleAbove} />
      {keyed(between).map(({ key, item }) => (
        <Fragment key={key}>{item.row}</Fragment>
      ))}
      {last.length > 0 && <Block rows={last} />}
    </>
  );
}

/**
 * A hair upwards. Between a head and what follows the library sees a gap where its sums are not exact, and takes
 * every gap for a place to break; with the hair there is none. More than a thousandth it would take for columns.
 */
const HAIR = { top: -0.0005 } as const;

type BlockProps = {
  readonly rows: readonly Row[];
  readonly isFirst?: boolean;
  readonly ruleAbove?: boolean;
};

function Block({ rows, isFirst = false, ruleAbove = false }: BlockProps) {
  const elements = keyed(rows).map(({ key, item }) => <Fragment key={key}>{item.row}</Fragment>);
  if (!staysWhole(rows.flatMap(({ texts }) => texts))) return <>{elements}</>;
  return (
    <View wrap={false} style={{ ...(isFirst ? HAIR : {}), ...(ruleAbove ? inkAbove : {}) }}>
      {elements}
    </View>
  );
}

/** The head of a table, printed again on every page the table continues on. */
export function TableHead({ children }: { readonly children: ReactNode }) {
  return (
    <View
      fixed
      // Whole: the foot of a page would cut its padding off and leave it there without rows.
      wrap={false}
      {...tagged("HeadRow")}
      // Any: it only says that no page ends between the head and the first rows.
      minPresenceAhead={1}
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
      <Rows
        rows={items.map((item, index) => ({
          texts: [item],
          row: (
            <RuledRow texts={[item]} tag="LI">
              <Text style={{ ...small, width: 14, textAlign: "right", marginTop: 1 }}>
                {numbered ? String(index + 1) : "–"}
              </Text>
              <Text style={{ flex: 1 }}>{item}</Text>
            </RuledRow>
          ),
        }))}
      />
    </View>
  );
}
