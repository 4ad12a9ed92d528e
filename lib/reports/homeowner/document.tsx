import { Document, Page, Text, View } from "@react-pdf/renderer";
import { accentOnPaper, headText, INK, PAGE, small, strong } from "../look";
import { JudgedFigures } from "../parts/judged-figures";
import { keyed } from "../parts/keyed";
import { LedgerTable } from "../parts/ledger-table";
import { PageFrame } from "../parts/page-frame";
import { PaperChart } from "../parts/paper-chart";
import { Paragraphs, PlainList, RuledRow, staysWhole, TableHead } from "../parts/rows";
import { Section } from "../parts/section";
import { HOMEOWNER_WORDS, type HomeownerWords } from "../words";
import { Cover } from "./cover";
import type { HomeownerPacketView, PacketInstalled, PacketLived, PrintedSetting } from "./view";

/** The homeowner packet as a PDF document. Texts have to be cleaned for print before. */
export function HomeownerDocument({ view }: { readonly view: HomeownerPacketView }) {
  const words = HOMEOWNER_WORDS[view.language];
  const { brand, job } = view;
  const accent = accentOnPaper(brand.accentHex);
  const foot = [view.documentId, view.revisionNote, `${words.made} ${view.createdOn}`]
    .filter((part) => part !== "")
    .join(" · ");
  const created = new Date(`${view.createdOn}T00:00:00Z`);
  return (
    <Document
      title={`${words.title}: ${job.customerName}, ${words.job} ${job.number}`}
      author={brand.companyName}
      subject={job.systemLine}
      keywords={view.documentId}
      creator="Dewledger"
      producer="Dewledger"
      language={view.language === "es" ? "es-US" : "en-US"}
      creationDate={created}
      pdfVersion="1.7"
      pageMode="useOutlines"
    >
      <Page
        size={view.paper === "a4" ? "A4" : "LETTER"}
        style={PAGE}
        layout={({ children, pageNumber, totalPages }) => (
          <PageFrame
            accent={accent}
            runningHead={{ left: brand.companyName, right: `${words.title} · ${words.job} ${job.number}` }}
            foot={foot}
            page={words.page(pageNumber ?? 1, totalPages ?? 1)}
            isFirst={pageNumber === 1}
          >
            {children}
          </PageFrame>
        )}
      >
        <Cover view={view} words={words} accent={accent} />
        <View break style={{ rowGap: 26 }}>
          <Sections view={view} words={words} accent={accent} />
        </View>
      </Page>
    </Document>
  );
}

type SectionsProps = {
  readonly view: HomeownerPacketView;
  readonly words: HomeownerWords;
  readonly accent: string;
};

function Sections({ view, words, accent }: SectionsProps) {
  return (
    <>
      <Section number={1} title={words.installed} accent={accent}>
        <Installed installed={view.installed} words={words} />
      </Section>
      <Section number={2} title={words.howItIsSet} accent={accent}>
        <Settings settings={view.howItIsSet} words={words} />
      </Section>
      <Section
        number={3}
        title={words.measured}
        accent={accent}
        lead={view.measured.length === 0 ? undefined : words.measuredLead}
      >
        {view.measured.length === 0 && <Text style={small}>{words.notMeasured}</Text>}
        {keyed(view.measured).map(({ key, item: { heading, figures } }) => (
          <JudgedFigures key={key} heading={heading} figures={figures} words={words} />
        ))}
      </Section>
      <Section number={4} title={words.ledger} accent={accent} lead={words.ledgerLead}>
        {view.ledger.length === 0 ? (
          <Text style={small}>{words.nothingGiven}</Text>
        ) : (
          <LedgerTable groups={view.ledger} words={words} />
        )}
      </Section>
      <Section number={5} title={words.lived} accent={accent}>
        <Lived lived={view.lived} words={words} />
      </Section>
      <Section number={6} title={words.howToRun} accent={accent}>
        <PlainList items={view.howToRun} numbered ifNone={words.nothingGiven} />
      </Section>
      <Section number={7} title={words.whenToCall} accent={accent}>
        <PlainList items={view.whenToCall} numbered={false} ifNone={words.nothingGiven} />
        <Cautions cautions={view.cautions} words={words} />
        <Closing view={view} words={words} />
      </Section>
    </>
  );
}

function Installed({
  installed,
  words,
}: {
  readonly installed: PacketInstalled;
  readonly words: HomeownerWords;
}) {
  return (
    <View style={{ borderTopWidth: 0.9, borderTopColor: INK }}>
      {keyed([...installed.equipment, installed.capacitySetting]).map(({ key, item: { label, text } }) => (
        <RuledRow key={key} texts={[label, text]}>
          <Text style={{ ...small, width: 130, marginTop: 1 }}>{label}</Text>
          <Text style={{ flex: 1 }}>{text}</Text>
        </RuledRow>
      ))}
      {installed.demoData && <Text style={{ ...small, ...strong, marginTop: 5 }}>{words.demoData}</Text>}
    </View>
  );
}

function Settings({
  settings,
  words,
}: {
  readonly settings: readonly PrintedSetting[];
  readonly words: HomeownerWords;
}) {
  if (settings.length === 0) return <Text style={small}>{words.nothingGiven}</Text>;
  return (
    <View>
      <TableHead>
        <Text style={{ ...headText, width: 150 }}>{words.setting}</Text>
        <Text style={{ ...headText, width: 100 }}>{words.setTo}</Text>
        <Text style={{ ...headText, flex: 1 }}>{words.why}</Text>
      </TableHead>
      {keyed(settings).map(({ key, item: { name, setTo, why } }) => (
        <RuledRow key={key} texts={[name, setTo ?? "", why]}>
          <Text style={{ width: 150 }}>{name}</Text>
          <Text style={setTo === null ? { ...small, width: 100, marginTop: 1 } : { ...strong, width: 100 }}>
            {setTo ?? words.notRecorded}
          </Text>
          <Text style={{ ...small, flex: 1, marginTop: 1 }}>{why}</Text>
        </RuledRow>
      ))}
    </View>
  );
}

function Lived({ lived, words }: { readonly lived: PacketLived | null; readonly words: HomeownerWords }) {
  if (lived === null) return <Text>{words.notLived}</Text>;
  return (
    <View>
      <Paragraphs text={lived.words} />
      {lived.chart !== null && <PaperChart chart={lived.chart} />}
      <JudgedFigures heading={lived.period} figures={lived.figures} words={words} />
    </View>
  );
}

function Cautions({
  cautions,
  words,
}: {
  readonly cautions: readonly string[];
  readonly words: HomeownerWords;
}) {
  if (cautions.length === 0) return null;
  return (
    <View
      wrap={!staysWhole(cautions)}
      style={{ borderWidth: 0.9, borderColor: INK, marginTop: 8, padding: 10, paddingBottom: 6 }}
    >
      <Text style={{ ...strong, marginBottom: 3 }} minPresenceAhead={30}>
        {words.cautions}
      </Text>
      {keyed(cautions).map(({ key, item }) => (
        <Text key={key} style={{ marginBottom: 4 }}>
          {item}
        </Text>
      ))}
    </View>
  );
}

function Closing({ view, words }: { readonly view: HomeownerPacketView; readonly words: HomeownerWords }) {
  const { brand } = view;
  return (
    <View wrap={!staysWhole([brand.closingWords, ...brand.contactLines])} style={{ marginTop: 10 }}>
      <Paragraphs text={brand.closingWords} />
      <View wrap={false} style={{ marginTop: 8 }}>
        <Text style={headText}>{words.reach}</Text>
        <Text style={strong}>{brand.companyName}</Text>
        {keyed([...brand.contactLines, brand.licenceLine]).map(({ key, item }) => (
          <Text key={key}>{item}</Text>
        ))}
      </View>
    </View>
  );
}
