import { Image, Text, View } from "@react-pdf/renderer";
import { VERDICTS } from "@/lib/engineering/findings";
import type { PrintedFigure } from "../figures";
import { headText, inkAbove, PAGE, QUIET, readableOn, row, ruleBelow, small, strong } from "../look";
import { inOutline } from "../parts/in-outline";
import { keyed } from "../parts/keyed";
import { Paragraphs } from "../parts/rows";
import { tagged } from "../parts/tags";
import { VerdictMark } from "../parts/verdict-mark";
import type { HomeownerWords } from "../words";
import type { HomeownerPacketView, PacketBrand } from "./view";

type CoverProps = {
  readonly view: HomeownerPacketView;
  readonly words: HomeownerWords;
  readonly accent: string;
};

/** The first page: whose house, what was promised, how it stands, and how to read the rest. */
export function Cover({ view, words, accent }: CoverProps) {
  const { job, promise, inShort } = view;
  return (
    <View>
      <Letterhead brand={view.brand} />
      <View style={titleStyle(view.brand.coverStyle, accent)} {...inOutline(words.title)}>
        <Text
          {...tagged("H1")}
          style={{ ...strong, ...onBand(view.brand.coverStyle, accent), fontSize: 10.5 }}
        >
          {words.title}
        </Text>
        <Text style={{ ...strong, fontSize: 27, lineHeight: 1.2, marginTop: 6, marginBottom: 6 }}>
          {job.customerName}
        </Text>
        {keyed(job.addressLines).map(({ key, item }) => (
          <Text key={key} style={{ fontSize: 11 }}>
            {item}
          </Text>
        ))}
        <Text
          style={{ ...(view.brand.coverStyle === "band" ? {} : { color: QUIET }), marginTop: 6 }}
        >{`${words.job} ${job.number} · ${job.systemLine}`}</Text>
      </View>

      <View style={{ ...inkAbove, paddingTop: 8 }}>
        <Text {...tagged("H2")} style={headText}>
          {words.promise}
        </Text>
        <View style={{ ...row, gap: 28, marginTop: 4 }}>
          <LargeFigure figure={promise.setpoint} ifMissing={words.missing.designed} />
          <LargeFigure figure={promise.humidityLimit} ifMissing={words.missing.designed} />
          <View style={{ flex: 1, paddingTop: 9 }}>
            <Paragraphs text={promise.words} />
          </View>
        </View>
        {view.forecast && <Text style={{ marginTop: 8 }}>{view.forecast.sentence}</Text>}
      </View>

      {inShort.length > 0 && (
        <View style={{ ...inkAbove, marginTop: 18, paddingTop: 8 }}>
          <Text {...tagged("H2")} style={{ ...headText, marginBottom: 2 }}>
            {words.inShort}
          </Text>
          {keyed(inShort).map(({ key, item: { sentence, verdict } }) => (
            <View key={key} wrap={false} style={{ ...row, ...ruleBelow, gap: 14, paddingVertical: 5 }}>
              <Text style={{ flex: 1, fontSize: 10 }}>{sentence}</Text>
              <View style={{ width: 84, paddingTop: 1 }}>
                <VerdictMark verdict={verdict} word={words.verdicts[verdict]} />
              </View>
            </View>
          ))}
        </View>
      )}

      <View style={{ marginTop: 14 }}>
        <Paragraphs text={view.brand.coverWords} />
      </View>
      <Dates view={view} />
      <Legend words={words} />
    </View>
  );
}

/** On the left the page's margin ends, on the right its edge: the band runs from paper's edge to paper's edge. */
const BAND = {
  marginLeft: -PAGE.paddingLeft,
  marginRight: -PAGE.paddingRight,
  paddingLeft: PAGE.paddingLeft,
  paddingRight: PAGE.paddingRight,
  paddingVertical: 20,
  marginTop: 22,
  marginBottom: 24,
} as const;

function titleStyle(style: PacketBrand["coverStyle"], accent: string) {
  if (style === "ledger") return { marginTop: 34, marginBottom: 22 };
  return { ...BAND, backgroundColor: accent, color: readableOn(accent) };
}

function onBand(style: PacketBrand["coverStyle"], accent: string) {
  return style === "ledger" ? { color: accent } : {};
}

function Letterhead({ brand }: { readonly brand: PacketBrand }) {
  return (
    <View style={{ ...row, gap: 24, alignItems: "flex-start", justifyContent: "space-between" }}>
      <View style={{ width: brand.logoPng ? 210 : 270 }}>
        {brand.logoPng ? (
          <Image src={{ data: Buffer.from(brand.logoPng), format: "png" }} style={LOGO} />
        ) : (
          <Text style={{ ...strong, fontSize: 17, lineHeight: 1.2 }}>{brand.companyName}</Text>
        )}
      </View>
      <View style={{ flex: 1, alignItems: "flex-end" }}>
        {brand.logoPng && <Text style={{ ...strong, fontSize: 9 }}>{brand.companyName}</Text>}
        {keyed([...brand.contactLines, brand.licenceLine]).map(({ key, item }) => (
          <Text key={key} style={{ ...small, textAlign: "right" }}>
            {item}
          </Text>
        ))}
      </View>
    </View>
  );
}

const LOGO = { height: 58, objectFit: "contain", objectPosition: "left" } as const;

function LargeFigure({ figure, ifMissing }: { readonly figure: PrintedFigure; readonly ifMissing: string }) {
  return (
    <View style={{ maxWidth: 130 }}>
      {figure.value === null ? (
        <Text style={{ ...strong, fontSize: 13, marginTop: 12, marginBottom: 9 }}>{ifMissing}</Text>
      ) : (
        <Text style={{ fontSize: 34, lineHeight: 1.25 }}>
          {figure.value}
          <Text style={{ fontSize: 15 }}>{` ${figure.unit}`}</Text>
        </Text>
      )}
      <Text style={small}>{figure.label}</Text>
    </View>
  );
}

function Dates({ view }: { readonly view: HomeownerPacketView }) {
  return (
    <View wrap={false} style={{ ...row, gap: 12, marginTop: 8 }}>
      {keyed(view.job.dates).map(({ key, item: { label, text } }) => (
        <View key={key} style={{ flex: 1, justifyContent: "space-between" }}>
          <Text style={headText}>{label}</Text>
          <Text>{text}</Text>
        </View>
      ))}
    </View>
  );
}

/** So that nobody has to guess what a mark means, whatever the printer does to its colour. */
function Legend({ words }: { readonly words: HomeownerWords }) {
  return (
    <View wrap={false} style={{ marginTop: 14 }}>
      <Text style={{ ...headText, marginBottom: 3 }}>{words.marks}</Text>
      <View style={{ ...row, flexWrap: "wrap", columnGap: 12, rowGap: 3 }}>
        {VERDICTS.map((verdict) => (
          <View key={verdict} style={{ ...row, gap: 6, width: "47%" }}>
            <View style={{ width: 74 }}>
              <VerdictMark verdict={verdict} word={words.verdicts[verdict]} />
            </View>
            <Text style={{ ...small, flex: 1 }}>{words.verdictMeanings[verdict]}</Text>
          </View>
        ))}
      </View>
    </View>
  );
}
