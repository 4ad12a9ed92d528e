import { Document, Page, Text, View } from "@react-pdf/renderer";
import { accentOnPaper, PAGE, small } from "../look";
import { JudgedFigures } from "../parts/judged-figures";
import { keyed } from "../parts/keyed";
import { LedgerTable } from "../parts/ledger-table";
import { PageFrame } from "../parts/page-frame";
import { PlainList } from "../parts/rows";
import { Section } from "../parts/section";
import { HOMEOWNER_WORDS, type HomeownerWords } from "../words";
import { Cover } from "./cover";
import { Cautions, Closing, Lived, Terms } from "./living-sections";
import { Installed, Settings } from "./setup-sections";
import type { HomeownerPacketView } from "./view";

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
            note={view.replacedNote}
          >
            {children}
          </PageFrame>
        )}
      >
        <Cover view={view} words={words} accent={accent} />
        <View break>
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
      <Section number={1} title={words.installed} accent={accent} above={0}>
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
      <Section number={7} title={words.terms} accent={accent}>
        <Terms terms={view.terms} words={words} />
      </Section>
      <Section number={8} title={words.whenToCall} accent={accent}>
        <PlainList items={view.whenToCall} numbered={false} ifNone={words.nothingGiven} />
        <Cautions cautions={view.cautions} words={words} />
        <Closing view={view} words={words} />
      </Section>
    </>
  );
}
