import { Document, Page, Text, View } from "@react-pdf/renderer";
import { accentOnPaper, PAGE, row, small, strong } from "../look";
import { inOutline } from "../parts/in-outline";
import { keyed } from "../parts/keyed";
import { CompanyLogo } from "../parts/logo";
import { PageFrame } from "../parts/page-frame";
import { Section } from "../parts/section";
import { tagged } from "../parts/tags";
import { HOMEOWNER_WORDS } from "../words";
import { SheetBlock } from "./blocks";
import type { SheetView } from "./view";

const words = HOMEOWNER_WORDS.en;

/** A working paper: a plain head and numbered sections. Texts have to be cleaned for print before. */
export function SheetDocument({ view }: { readonly view: SheetView }) {
  const accent = accentOnPaper(view.brand.accentHex);
  const foot = [view.documentId, view.revisionNote, `${words.made} ${view.createdOn}`]
    .filter((part) => part !== "")
    .join(" · ");
  return (
    <Document
      title={`${view.title}: ${view.name}`}
      author={view.brand.companyName}
      subject={view.facts.map(({ label, text }) => `${label} ${text}`).join(", ")}
      keywords={view.documentId}
      creator="Dewledger"
      producer="Dewledger"
      language="en-US"
      creationDate={new Date(`${view.createdOn}T00:00:00Z`)}
    >
      <Page
        size={view.paper === "a4" ? "A4" : "LETTER"}
        style={view.dense ? DENSE : PAGE}
        layout={({ children, pageNumber, totalPages }) => (
          <PageFrame
            accent={accent}
            runningHead={{ left: view.brand.companyName, right: `${view.title} · ${view.name}` }}
            foot={foot}
            page={words.page(pageNumber ?? 1, totalPages ?? 1)}
            isFirst={pageNumber === 1}
            note={view.replacedNote}
            dense={view.dense}
          >
            {children}
          </PageFrame>
        )}
      >
        <Head view={view} accent={accent} />
        {keyed(view.sections).map(({ key, item }) => (
          <Section
            key={key}
            number={Number(key) + 1}
            title={item.title}
            accent={accent}
            lead={item.lead}
            dense={view.dense}
          >
            {keyed(item.blocks).map(({ key: blockKey, item: block }) => (
              <SheetBlock key={blockKey} block={block} words={words} dense={view.dense} />
            ))}
          </Section>
        ))}
      </Page>
    </Document>
  );
}

const DENSE = { ...PAGE, paddingTop: 16, paddingBottom: 16, fontSize: 8.2, lineHeight: 1.26 } as const;

function Head({ view, accent }: { readonly view: SheetView; readonly accent: string }) {
  const { brand, dense } = view;
  return (
    <View {...inOutline(view.title)}>
      <View style={{ ...row, gap: 20, justifyContent: "space-between", alignItems: "flex-start" }}>
        <View style={{ flex: 1 }}>
          <Text {...tagged("H1")} style={{ ...strong, color: accent, fontSize: 10.5 }}>
            {view.title}
          </Text>
          <Text
            style={{ ...strong, fontSize: dense ? 15 : 19, lineHeight: 1.2, marginTop: 2, marginBottom: 2 }}
          >
            {view.name}
          </Text>
          {keyed(view.nameLines).map(({ key, item }) => (
            <Text key={key}>{item}</Text>
          ))}
        </View>
        <View style={{ width: 150, alignItems: "flex-end" }}>
          <CompanyLogo brand={brand} height={dense ? 28 : 38} />
          <Text style={{ ...small, ...strong, textAlign: "right" }}>{brand.companyName}</Text>
          {keyed([...brand.contactLines, brand.licenceLine]).map(({ key, item }) =>
            dense && Number(key) > 0 ? null : (
              <Text key={key} style={{ ...small, textAlign: "right" }}>
                {item}
              </Text>
            ),
          )}
        </View>
      </View>
      <View style={{ ...row, flexWrap: "wrap", columnGap: 22, rowGap: 4, marginTop: dense ? 2 : 6 }}>
        {keyed(view.facts).map(({ key, item: { label, text } }) => (
          <View key={key} style={{ maxWidth: 220 }}>
            <Text style={{ ...small, ...strong }}>{label}</Text>
            <Text>{text}</Text>
          </View>
        ))}
      </View>
    </View>
  );
}
