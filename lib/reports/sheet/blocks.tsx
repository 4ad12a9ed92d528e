import { Text, View } from "@react-pdf/renderer";
import { BAR, Cautions } from "../homeowner/living-sections";
import { headText, QUIET, row, small, strong } from "../look";
import { JudgedFigures } from "../parts/judged-figures";
import { keyed } from "../parts/keyed";
import { LedgerTable } from "../parts/ledger-table";
import { PaperChart } from "../parts/paper-chart";
import { Paragraphs, PlainList, Rows, RuledRow, TableHead } from "../parts/rows";
import { tagged } from "../parts/tags";
import { VerdictMark } from "../parts/verdict-mark";
import type { HomeownerWords } from "../words";
import { Findings } from "./findings";
import { Photos } from "./photos";
import type { Block, TableBlock } from "./view";

/** Points: more than the gap to the next block, which keeps its own begin together; much more would chain them all. */
const OVER_THE_GAP = 12;

type BlockProps<B> = { readonly block: B; readonly words: HomeownerWords; readonly dense: boolean };

/** Draws one block of a section. */
export function SheetBlock({ block, words, dense }: BlockProps<Block>) {
  switch (block.kind) {
    case "heading":
      return (
        <View wrap={false} minPresenceAhead={OVER_THE_GAP} style={{ ...row, gap: 10, marginTop: 4 }}>
          <View style={{ flex: 1 }}>
            <Text {...tagged("H3")} style={strong}>
              {block.text}
            </Text>
            {block.note !== undefined && <Text style={small}>{block.note}</Text>}
          </View>
          {block.verdict != null && (
            <View style={{ width: 84 }}>
              <VerdictMark verdict={block.verdict} word={words.verdicts[block.verdict]} />
            </View>
          )}
        </View>
      );
    case "words":
      return (
        <View>
          <Paragraphs text={block.words} />
        </View>
      );
    case "facts":
      return (
        <View {...tagged("Table")}>
          <Rows
            rows={block.rows.map(({ label, text }) => ({
              texts: [label, text],
              row: (
                <RuledRow texts={[label, text]} pad={2}>
                  <Text style={{ ...small, width: 190 }}>{label}</Text>
                  <Text style={{ flex: 1 }}>{text}</Text>
                </RuledRow>
              ),
            }))}
          />
        </View>
      );
    case "table":
      return <PlainTable block={block} words={words} dense={dense} />;
    case "list":
      return <PlainList items={block.items} numbered={block.numbered} ifNone={words.nothingGiven} />;
    case "findings":
      return <Findings findings={block.findings} words={words} />;
    case "figures":
      return <JudgedFigures heading={block.heading} figures={block.figures} words={words} />;
    case "ledger":
      return <LedgerTable groups={block.groups} words={words} />;
    case "chart":
      return <PaperChart chart={block.chart} />;
    case "photos":
      return <Photos photos={block.photos} />;
    case "cautions":
      return dense ? (
        <DenseCautions items={block.items} />
      ) : (
        <Cautions cautions={block.items} words={words} />
      );
    case "blanks":
      return <Blanks block={block} />;
  }
}

function PlainTable({ block, dense }: BlockProps<TableBlock>) {
  if (block.rows.length === 0) return <Text style={small}>{block.ifNone}</Text>;
  const place = block.columns.map(({ width, align }) => ({
    ...(width === undefined ? { flex: 1 } : { width }),
    ...(align === undefined ? {} : { textAlign: align }),
  }));
  return (
    <View {...tagged("Table")}>
      <TableHead>
        {keyed(block.columns).map(({ key, item }) => (
          <Text key={key} style={{ ...headText, ...place[Number(key)] }}>
            {item.head}
          </Text>
        ))}
      </TableHead>
      <Rows
        rows={block.rows.map((cells) => ({
          texts: cells,
          row: (
            <RuledRow texts={cells} pad={dense ? 0.8 : 2}>
              {keyed(cells).map(({ key, item }) => (
                <Text
                  key={key}
                  style={{ ...place[Number(key)], ...(block.columns[Number(key)]?.strong ? strong : {}) }}
                >
                  {item}
                </Text>
              ))}
            </RuledRow>
          ),
        }))}
      />
    </View>
  );
}

/** Cautions where the section's own heading says what they are. */
function DenseCautions({ items }: { readonly items: readonly string[] }) {
  return (
    <View wrap={false} style={{ paddingLeft: 11 }}>
      <View style={BAR} />
      {keyed(items).map(({ key, item }) => (
        <Text key={key} style={{ marginBottom: 1.5, fontSize: 8.2, lineHeight: 1.22 }}>
          {item}
        </Text>
      ))}
    </View>
  );
}

/** Lines to write on in two columns of rows, each with a place for every head. */
function Blanks({ block }: { readonly block: Extract<Block, { kind: "blanks" }> }) {
  const half = Math.ceil(block.labels.length / 2);
  return (
    // Whole: lines to write on are of no use without the heads above them.
    <View wrap={false} style={{ ...row, gap: 16 }}>
      {keyed([block.labels.slice(0, half), block.labels.slice(half)]).map(({ key, item }) => (
        <View key={key} {...tagged("Table")} style={{ flex: 1 }}>
          <View {...tagged("HeadRow")} wrap={false} style={{ ...row, gap: 6 }}>
            <Text style={{ ...headText, width: 84 }}> </Text>
            {keyed(block.heads).map(({ key: headKey, item: head }) => (
              <Text key={headKey} style={{ ...headText, flex: 1 }}>
                {head}
              </Text>
            ))}
            <Text style={{ ...headText, width: 30 }}> </Text>
          </View>
          {keyed(item).map(({ key: lineKey, item: { label, unit } }) => (
            <View key={lineKey} {...tagged("TR")} wrap={false} style={{ ...row, ...BLANK_ROW }}>
              <Text style={{ width: 84 }}>{label}</Text>
              {keyed(block.heads).map(({ key: headKey }) => (
                <View key={headKey} style={WRITING_LINE} />
              ))}
              <Text style={{ ...small, width: 30 }}>{unit}</Text>
            </View>
          ))}
        </View>
      ))}
    </View>
  );
}

const BLANK_ROW = { gap: 6, height: 15.5, alignItems: "flex-end" } as const;
const WRITING_LINE = { flex: 1, borderBottomWidth: 0.8, borderBottomColor: QUIET, height: 14 } as const;
