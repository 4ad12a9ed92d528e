import { Text, View } from "@react-pdf/renderer";
import type { Basis, Certainty } from "@/lib/engineering/findings";
import { row, small, strong } from "../look";
import { Rows, RuledRow } from "../parts/rows";
import { tagged } from "../parts/tags";
import { VerdictOrInformation } from "../parts/verdict-mark";
import type { HomeownerWords } from "../words";
import type { PrintedFinding } from "./view";

/** Findings with their verdict, numbers, basis and what to do. */
export function Findings({
  findings,
  words,
}: {
  readonly findings: readonly PrintedFinding[];
  readonly words: HomeownerWords;
}) {
  if (findings.length === 0) return <Text style={small}>{words.nothingGiven}</Text>;
  return (
    <View {...tagged("Table")}>
      <Rows
        rows={findings.map((item) => ({
          texts: textsOf(item),
          row: <FindingRow item={item} words={words} />,
        }))}
      />
    </View>
  );
}

const textsOf = ({ title, statement, nextStep, figures }: PrintedFinding) => [
  title,
  statement,
  nextStep ?? "",
  ...figures,
];

function FindingRow({ item, words }: { readonly item: PrintedFinding; readonly words: HomeownerWords }) {
  return (
    <RuledRow texts={textsOf(item)} pad={2}>
      <View style={{ width: 78, paddingTop: 1 }}>
        <VerdictOrInformation verdict={item.verdict} words={words} />
      </View>
      <View style={{ flex: 1 }}>
        <Text style={strong}>{item.title}</Text>
        <Text>{item.statement}</Text>
        {item.figures.length > 0 && <Text style={small}>{item.figures.join(" · ")}</Text>}
        <Text style={small}>{basisText(item.basis)}</Text>
        {item.nextStep !== null && <Labelled label="To do" text={item.nextStep} />}
        {item.caution !== null && <Labelled label="Caution" text={item.caution} />}
      </View>
    </RuledRow>
  );
}

function Labelled({ label, text }: { readonly label: string; readonly text: string }) {
  return (
    <View style={{ ...row, gap: 4 }}>
      <Text style={{ ...small, ...strong, width: 38 }}>{label}</Text>
      <Text style={{ ...small, flex: 1 }}>{text}</Text>
    </View>
  );
}

const CERTAINTY_WORDS: Readonly<Record<Certainty, string>> = {
  published: "read in the source",
  computed: "computed",
  recalled: "from memory",
  unverified: "from memory, to be verified against the standard",
  practice: "",
};

/** What a finding rests on, in a line. */
function basisText({ kind, source, certainty }: Basis): string {
  const sure = CERTAINTY_WORDS[certainty];
  return `Basis: ${kind}${kind === source ? "" : `: ${source}`}${sure === "" ? "" : ` (${sure})`}`;
}
