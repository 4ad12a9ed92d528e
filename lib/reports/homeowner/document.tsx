import { Document, Page, Text, View } from "@react-pdf/renderer";
import { accentOnPaper, PAGE, small } from "../look";
import { JudgedFigures } from "../parts/judged-figures";
import { keyed } from "../parts/keyed";
import { LedgerTable } from "../parts/ledger-table";
import { PageFrame } from "../parts/page-frame";
import { PlainList, staysWhole } from "../parts/rows";
import { Section } from "../parts/section";
import { HOMEOWNER_WORDS, type HomeownerWords } from "../words";
import { Cover } from "./cover";
import { Cautions, Closing, Expected, Lived, Terms } from "./living-sections";
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
  const { brand } = view;
  const parts = [
    // What was kept of a packet before forecasts were printed has none.
    ...(view.forecast
      ? [{ title: words.forecast, body: <Expected forecast={view.forecast} words={words} /> }]
      : []),
    { title: words.installed, body: <Installed installed={view.installed} words={words} /> },
    { title: words.howItIsSet, body: <Settings settings={view.howItIsSet} words={words} /> },
    {
      title: words.measured,
      lead: view.measured.length === 0 ? undefined : words.measuredLead,
      body:
        view.measured.length === 0 ? (
          <Text style={small}>{words.notMeasured}</Text>
        ) : (
          keyed(view.measured).map(({ key, item: { heading, figures } }) => (
            <JudgedFigures key={key} heading={heading} figures={figures} words={words} />
          ))
        ),
    },
    {
      title: words.ledger,
      lead: words.ledgerLead,
      body:
        view.ledger.length === 0 ? (
          <Text style={small}>{words.nothingGiven}</Text>
        ) : (
          <LedgerTable groups={view.ledger} words={words} />
        ),
    },
    { title: words.lived, body: <Lived lived={view.lived} words={words} /> },
    {
      title: words.howToRun,
      body: <PlainList items={view.howToRun} numbered ifNone={words.nothingGiven} />,
    },
    { title: words.terms, body: <Terms terms={view.terms} words={words} /> },
    {
      title: words.whenToCall,
      body: (
        // On one page, whole: it is what the house keeps at the telephone.
        <View
          wrap={
            !staysWhole([...view.whenToCall, ...view.cautions, brand.closingWords, ...brand.contactLines])
          }
        >
          <PlainList items={view.whenToCall} numbered={false} ifNone={words.nothingGiven} />
          <Cautions cautions={view.cautions} words={words} />
          <Closing view={view} words={words} />
        </View>
      ),
    },
  ];
  return keyed(parts).map(({ key, item: { title, lead, body } }) => (
    <Section
      key={key}
      number={Number(key) + 1}
      title={title}
      accent={accent}
      lead={lead}
      {...(key === "0" ? { above: 0 } : {})}
    >
      {body}
    </Section>
  ));
}
