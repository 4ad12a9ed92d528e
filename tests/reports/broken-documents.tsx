import { Document, Page, Path, Svg, Text, View } from "@react-pdf/renderer";
import type { ReactNode } from "react";
import { PAGE } from "@/lib/reports/look";
import { tagged } from "@/lib/reports/parts/tags";

/** Documents with one fault each, by which the checks of pages are checked themselves. */
const broken = (children: ReactNode) => (
  <Document
    title="Broken"
    author="Nobody"
    subject="A fault"
    keywords="fault"
    creator="A test"
    producer="A test"
    language="en-US"
    creationDate={new Date("2026-07-31T00:00:00Z")}
  >
    <Page size="LETTER" style={PAGE}>
      {children}
    </Page>
  </Document>
);

const LONG = "A text that needs many more lines than its box has. ".repeat(5);

export const outOfBox = broken(
  <View style={{ width: 100 }}>
    <View style={{ width: 200, height: 10 }} />
  </View>,
);

export const tooSmall = broken(
  <View>
    <View style={{ height: 10 }}>
      <Text style={{ height: 30 }}>{LONG}</Text>
    </View>
    <Text>What stands below.</Text>
  </View>,
);

export const tooWide = broken(
  <View style={{ flexDirection: "row" }}>
    <Text style={{ width: 40 }}>{"unbreakable".repeat(2)}</Text>
    <Text>beside</Text>
  </View>,
);

export const overlapping = broken(
  <View>
    <Text>Above</Text>
    <Text style={{ marginTop: -9 }}>Below</Text>
  </View>,
);

/** A block 30 wide at `x` in a drawing 100 wide. */
export const drawnAt = (x: number) =>
  broken(
    <Svg viewBox="0 0 100 20" style={{ width: 300, height: 60 }}>
      <Path d={`M${x} 2h30v12h-30z`} fill="#000000" />
    </Svg>,
  );

export const inTheMargin = broken(<Text style={{ marginRight: -50, textAlign: "right" }}>Too far out</Text>);

/** A table whose head may break, at the foot of a page: its lower edge and all rows go over without it. */
export const headAlone = broken(
  <View>
    <View style={{ height: 720 }} />
    <View {...tagged("Table")}>
      <View fixed {...tagged("HeadRow")} style={{ paddingBottom: 12 }}>
        <Text>Head</Text>
      </View>
      <View wrap={false} {...tagged("TR")}>
        <Text>Row</Text>
      </View>
    </View>
  </View>,
);

/** A heading at the foot of a page, with what it heads over the page. */
export const headingAlone = broken(
  <>
    <View style={{ height: 690 }}>
      <Text>Before</Text>
    </View>
    <Text {...tagged("H2")}>Heading</Text>
    <View wrap={false} style={{ height: 60 }}>
      <Text>What it heads</Text>
    </View>
  </>,
);

/** A few lines that found no room on the page before, and then a new page. */
export const almostEmpty = broken(
  <>
    <Text>A line by itself</Text>
    <View break>
      <Text>The rest</Text>
    </View>
  </>,
);

/** Read from below upwards. */
export const readUpwards = broken(
  <View style={{ height: 100, flexDirection: "column-reverse" }}>
    <Text>First, below</Text>
    <Text>Second, above</Text>
  </View>,
);
