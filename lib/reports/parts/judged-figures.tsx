import { Text, View } from "@react-pdf/renderer";
import type { JudgedFigure } from "../figures";
import { headText, INK, row, small, strong } from "../look";
import type { HomeownerWords } from "../words";
import { RangeStripPicture } from "./range-strip";
import { Rows, RuledRow, TableHead } from "./rows";
import { tagged } from "./tags";
import { VERDICT_COLORS, VerdictOrInformation } from "./verdict-mark";

type JudgedFiguresProps = {
  readonly heading: string;
  readonly figures: readonly JudgedFigure[];
  readonly words: HomeownerWords;
};

const READING = { width: 104 } as const;
const VALUE = { width: 54, textAlign: "right" } as const;
const AIM = { width: 114 } as const;
const VERDICT = { width: 82 } as const;

const textsOf = ({ label, plainWords, aim }: JudgedFigure) => [label, plainWords ?? "", aim ?? ""];

/** Readings with what was aimed for, a picture of both, and the verdict. */
export function JudgedFigures({ heading, figures, words }: JudgedFiguresProps) {
  return (
    <View {...tagged("Table")}>
      <TableHead>
        <Text style={{ ...headText, flex: 1 }}>{heading}</Text>
        <Text style={{ ...headText, ...READING }}>{words.reading}</Text>
        <Text style={{ ...headText, ...AIM }}>{words.aim}</Text>
        <Text style={{ ...headText, ...VERDICT }}>{words.verdict}</Text>
      </TableHead>
      <Rows
        rows={figures.map((item) => ({
          texts: textsOf(item),
          row: <FigureRow figure={item} words={words} />,
        }))}
      />
    </View>
  );
}

function FigureRow({ figure, words }: { readonly figure: JudgedFigure; readonly words: HomeownerWords }) {
  const { label, value, unit, uncertainty, aim, plainWords, strip, verdict } = figure;
  return (
    <RuledRow texts={textsOf(figure)}>
      <View style={{ flex: 1 }}>
        <Text style={strong}>{label}</Text>
        {plainWords !== null && <Text style={small}>{plainWords}</Text>}
      </View>
      <View style={READING}>
        {value === null ? (
          <Text style={small}>{words.notMeasured}</Text>
        ) : (
          <View style={{ ...row, gap: 4 }}>
            <Text style={{ ...VALUE, ...strong, fontSize: 11, lineHeight: 1.25 }}>{value}</Text>
            <Text style={{ fontSize: 9, lineHeight: 1.42, marginTop: 0.6 }}>{unit}</Text>
          </View>
        )}
        {value !== null && uncertainty !== undefined && (
          <Text style={{ ...VALUE, ...small }}>{`±\u00a0${uncertainty}`}</Text>
        )}
      </View>
      <View style={AIM}>
        {strip !== null && (
          <RangeStripPicture strip={strip} color={verdict === null ? INK : VERDICT_COLORS[verdict]} />
        )}
        <Text style={small}>{aim ?? ""}</Text>
      </View>
      <View style={VERDICT}>
        <VerdictOrInformation verdict={verdict} words={words} />
      </View>
    </RuledRow>
  );
}
