import { Text, View } from "@react-pdf/renderer";
import { headText, INK, row, strong } from "../look";
import { JudgedFigures } from "../parts/judged-figures";
import { keyed } from "../parts/keyed";
import { PaperChart } from "../parts/paper-chart";
import { Paragraphs, staysWhole } from "../parts/rows";
import type { HomeownerWords } from "../words";
import { PrivatePageCode } from "./private-page";
import { LabelledRows } from "./setup-sections";
import type { HomeownerPacketView, PacketForecast, PacketLived, PacketTerms } from "./view";

/** What a typical year is forecast to be like. */
export function Expected({
  forecast,
  words,
}: {
  readonly forecast: PacketForecast;
  readonly words: HomeownerWords;
}) {
  return (
    <>
      <Paragraphs text={`${forecast.sentence}\n${forecast.words}`} />
      {forecast.figures.length > 0 && (
        <JudgedFigures heading={words.typicalYear} figures={forecast.figures} words={words} />
      )}
      {forecast.chart !== null && <PaperChart chart={forecast.chart} />}
    </>
  );
}

/** What the house's own log shows. */
export function Lived({
  lived,
  words,
}: {
  readonly lived: PacketLived | null;
  readonly words: HomeownerWords;
}) {
  if (lived === null) return <Text>{words.notLived}</Text>;
  return (
    <>
      <Paragraphs text={lived.words} />
      {lived.chart !== null && <PaperChart chart={lived.chart} />}
      <JudgedFigures heading={lived.period} figures={lived.figures} words={words} />
    </>
  );
}

/** What is warranted until when, and when maintenance is due. */
export function Terms({ terms, words }: { readonly terms: PacketTerms; readonly words: HomeownerWords }) {
  if (terms.dates.length === 0 && terms.words.length === 0) return <Text>{words.noTerms}</Text>;
  return (
    <>
      {terms.dates.length > 0 && <LabelledRows rows={terms.dates} />}
      {keyed(terms.words).map(({ key, item }) => (
        <View key={key} style={{ marginTop: 6 }}>
          <Paragraphs text={item} />
        </View>
      ))}
    </>
  );
}

/** Where the work can hurt. */
export function Cautions({
  cautions,
  words,
}: {
  readonly cautions: readonly string[];
  readonly words: HomeownerWords;
}) {
  if (cautions.length === 0) return null;
  // A bar beside each block, not a box around all: a box that breaks leaves its empty edge on the first page.
  return (
    <View style={{ marginTop: 8 }}>
      <View wrap={false} minPresenceAhead={30} style={BESIDE_BAR}>
        <View style={BAR} />
        <Text style={strong}>{words.cautions}</Text>
      </View>
      {keyed(cautions).map(({ key, item }) => (
        <View key={key} wrap={!staysWhole([item])} style={BESIDE_BAR}>
          <View style={BAR} />
          <Text>{item}</Text>
        </View>
      ))}
    </View>
  );
}

export const BAR = {
  position: "absolute",
  top: 0,
  bottom: 0,
  left: 0,
  width: 3,
  backgroundColor: INK,
} as const;
const BESIDE_BAR = { paddingLeft: 13, paddingBottom: 3 } as const;

/** The last words, and how to reach the company. */
export function Closing({
  view,
  words,
}: {
  readonly view: HomeownerPacketView;
  readonly words: HomeownerWords;
}) {
  const { brand } = view;
  return (
    <View wrap={!staysWhole([brand.closingWords, ...brand.contactLines])} style={{ marginTop: 10 }}>
      <Paragraphs text={brand.closingWords} />
      <View wrap={false} style={{ ...row, gap: 18, marginTop: 8 }}>
        <View style={{ flex: 1 }}>
          <Text style={headText}>{words.reach}</Text>
          <Text style={strong}>{brand.companyName}</Text>
          {keyed([...brand.contactLines, brand.licenceLine]).map(({ key, item }) => (
            <Text key={key}>{item}</Text>
          ))}
        </View>
        {view.privatePage !== null && <PrivatePageCode page={view.privatePage} words={words} />}
      </View>
    </View>
  );
}
