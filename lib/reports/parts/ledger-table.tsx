import { Text, View } from "@react-pdf/renderer";
import { cutLongWord } from "../fonts";
import type { LedgerCell, LedgerGroup, PrintedLedgerLine } from "../homeowner/view";
import { headText, row, ruleBelow, small, strong, TINT } from "../look";
import type { HomeownerWords } from "../words";
import { keyed } from "./keyed";
import { Rows, RuledRow, TableHead } from "./rows";
import { tagged } from "./tags";
import { VerdictOrInformation } from "./verdict-mark";

const COLUMNS = ["designed", "set", "measured", "lived"] as const;
const CELL = { width: 64, textAlign: "right" } as const;
const VERDICT = { width: 76 } as const;
const NOTE = { ...small, fontSize: 7, lineHeight: 1.25 } as const;

type LedgerTableProps = { readonly groups: readonly LedgerGroup[]; readonly words: HomeownerWords };

/** The job's lines × Designed, Set, Measured, Lived. */
export function LedgerTable({ groups, words }: LedgerTableProps) {
  return (
    <View {...tagged("Table")}>
      <TableHead>
        <Text style={{ ...headText, flex: 1 }}>{words.line}</Text>
        {COLUMNS.map((column) => (
          <Text key={column} style={{ ...headText, ...CELL }}>
            {words.columns[column]}
          </Text>
        ))}
        <Text style={{ ...headText, ...VERDICT }}>{words.verdict}</Text>
      </TableHead>
      {keyed(groups).map(({ key, item }) => (
        <Rows
          key={key}
          rows={[
            { texts: [item.heading], row: <GroupRow heading={item.heading} /> },
            ...item.lines.map((line) => ({
              texts: textsOf(line),
              row: <LedgerRow line={line} words={words} />,
            })),
          ]}
        />
      ))}
    </View>
  );
}

function GroupRow({ heading }: { readonly heading: string }) {
  return (
    <View
      {...tagged("TR")}
      style={{ ...row, ...ruleBelow, backgroundColor: TINT, paddingVertical: 2.5, paddingHorizontal: 4 }}
    >
      <Text style={{ ...strong, fontSize: 8, lineHeight: 1.38 }}>{heading}</Text>
    </View>
  );
}

const textsOf = (line: PrintedLedgerLine) => [
  line.label,
  ...COLUMNS.flatMap((column) => [line[column]?.value ?? "", line[column]?.note ?? ""]),
];

function LedgerRow({ line, words }: { readonly line: PrintedLedgerLine; readonly words: HomeownerWords }) {
  return (
    <RuledRow texts={textsOf(line)} pad={3}>
      <Text style={{ flex: 1 }}>{line.label}</Text>
      {COLUMNS.map((column) => (
        <Cell key={column} cell={line[column]} ifMissing={words.missing[column]} />
      ))}
      <View style={{ ...VERDICT, paddingTop: 1 }}>
        <VerdictOrInformation verdict={line.verdict} words={words} />
      </View>
    </RuledRow>
  );
}

/** What a column of this width can hold of one word. */
const LONGEST_CELL_WORD = 12;

function Cell({ cell, ifMissing }: { readonly cell: LedgerCell | null; readonly ifMissing: string }) {
  if (cell === null) return <Text style={{ ...small, ...CELL, marginTop: 1 }}>{ifMissing}</Text>;
  return (
    <View style={CELL}>
      <Text hyphenationCallback={(word) => cutLongWord(word, LONGEST_CELL_WORD)}>
        {cell.value}
        {cell.unit !== "" && <Text style={{ fontSize: 7.5 }}>{`\u00a0${cell.unit}`}</Text>}
      </Text>
      {cell.uncertainty !== undefined && <Text style={small}>{`±\u00a0${cell.uncertainty}`}</Text>}
      {cell.note !== undefined && <Text style={NOTE}>{cell.note}</Text>}
    </View>
  );
}
