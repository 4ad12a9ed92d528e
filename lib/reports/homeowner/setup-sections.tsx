import { Text, View } from "@react-pdf/renderer";
import { headText, small, strong } from "../look";
import { Rows, RuledRow, TableHead } from "../parts/rows";
import { tagged } from "../parts/tags";
import type { HomeownerWords } from "../words";
import type { LabelledText, PacketInstalled, PrintedSetting } from "./view";

/** What stands in the house. */
export function Installed({
  installed,
  words,
}: {
  readonly installed: PacketInstalled;
  readonly words: HomeownerWords;
}) {
  return (
    <View>
      <LabelledRows rows={[...installed.equipment, installed.capacitySetting]} />
      {installed.demoData && <Text style={{ ...small, ...strong, marginTop: 5 }}>{words.demoData}</Text>}
    </View>
  );
}

/** Names with what they stand for, ruled. */
export function LabelledRows({ rows }: { readonly rows: readonly LabelledText[] }) {
  return (
    <View {...tagged("Table")}>
      <Rows
        ruleAbove
        rows={rows.map(({ label, text }) => ({
          texts: [label, text],
          row: (
            <RuledRow texts={[label, text]}>
              <Text style={{ ...small, width: 130, marginTop: 1 }}>{label}</Text>
              <Text style={{ flex: 1 }}>{text}</Text>
            </RuledRow>
          ),
        }))}
      />
    </View>
  );
}

/** How it was left set, each with its reason. */
export function Settings({
  settings,
  words,
}: {
  readonly settings: readonly PrintedSetting[];
  readonly words: HomeownerWords;
}) {
  if (settings.length === 0) return <Text style={small}>{words.nothingGiven}</Text>;
  return (
    <View {...tagged("Table")}>
      <TableHead>
        <Text style={{ ...headText, width: 150 }}>{words.setting}</Text>
        <Text style={{ ...headText, width: 100 }}>{words.setTo}</Text>
        <Text style={{ ...headText, flex: 1 }}>{words.why}</Text>
      </TableHead>
      <Rows
        rows={settings.map(({ name, setTo, why }) => ({
          texts: [name, setTo ?? "", why],
          row: (
            <RuledRow texts={[name, setTo ?? "", why]}>
              <Text style={{ width: 150 }}>{name}</Text>
              <Text
                style={setTo === null ? { ...small, width: 100, marginTop: 1 } : { ...strong, width: 100 }}
              >
                {setTo ?? words.notRecorded}
              </Text>
              <Text style={{ ...small, flex: 1, marginTop: 1 }}>{why}</Text>
            </RuledRow>
          ),
        }))}
      />
    </View>
  );
}
