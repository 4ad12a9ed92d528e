import { Path, Svg, Text, View } from "@react-pdf/renderer";
import { headText, row, small, strong } from "../look";
import { tagged } from "../parts/tags";
import type { HomeownerWords } from "../words";
import type { PrivatePage } from "./view";

/** 25 mm: a phone reads it from an arm's length. */
const SIDE = 72;

/** The packet's page on the web, as a code for a phone. */
export function PrivatePageCode({
  page,
  words,
}: {
  readonly page: PrivatePage;
  readonly words: HomeownerWords;
}) {
  const { size, d } = page.qr;
  return (
    <View wrap={false} style={{ ...row, width: 252, gap: 10, alignItems: "flex-start" }}>
      <Svg
        {...tagged("Figure", `${words.privatePage}: ${page.href}`)}
        width={SIDE}
        height={SIDE}
        viewBox={`0 0 ${size} ${size}`}
      >
        <Path d={d} fill="#000000" />
      </Svg>
      <View style={{ flex: 1 }}>
        <Text style={headText}>{words.privatePage}</Text>
        <Text style={strong}>{words.privatePageUse}</Text>
        <Text style={small}>{words.privateUntil(page.until)}</Text>
      </View>
    </View>
  );
}
