import { beforeAll, expect, test } from "vitest";
import { compared } from "@/lib/domain/across-jobs";
import type { Callback } from "@/lib/domain/callbacks";
import type { LedgerLine } from "@/lib/domain/ledger";
import { type PrintedView, renderView } from "@/lib/reports/render-view";
import { homeownerPacketView } from "@/lib/services/homeowner-packet-view";
import { crewPacketView } from "@/lib/services/packet-views/crew";
import { filePacketView } from "@/lib/services/packet-views/file";
import { monthView } from "@/lib/services/packet-views/month";
import { reviewPacketView } from "@/lib/services/packet-views/review";
import { FULL_JOB } from "../support/full-job";
import { KEPT_FORECAST, LIVED } from "../support/kept-forecast";
import { PLAIN_BRAND, packetPartsOf } from "../support/packet-parts";
import { ledgerRows, quantitiesIn, strayQuantities } from "./packet-numbers";
import { readPdf } from "./read-pdf";

const context = { ...FULL_JOB, forecast: { ...KEPT_FORECAST, stale: false }, lived: LIVED };
const parts = packetPartsOf({ forecast: KEPT_FORECAST }, [], context);

const textOf = async (view: PrintedView) => (await readPdf(await renderView(view))).text;

const PACKETS = [
  ["homeowner, English", homeownerPacketView(parts, "en", null)],
  ["homeowner, Spanish", homeownerPacketView(parts, "es", null)],
  ["crew", crewPacketView(parts)],
  ["file", filePacketView(parts)],
  ["review", reviewPacketView(parts)],
] as const;
type Name = (typeof PACKETS)[number][0];
/** Each printed and read back once. */
const texts = new Map<string, string>();
beforeAll(async () => {
  for (const [name, view] of PACKETS) texts.set(name, (await textOf(view)).replaceAll("\u00a0", " "));
}, 120_000);
const textIn = (name: Name) => texts.get(name) ?? "";
const NAMES = PACKETS.map(([name]) => name);

test.each(NAMES)("%s: every number with a unit is the ledger’s, or stands in the records", (name) => {
  expect(quantitiesIn(textIn(name)).length).toBeGreaterThan(10);
  expect(strayQuantities(textIn(name), parts)).toEqual([]);
});

test("a number that is printed with its digits turned about is found, in every packet", () => {
  for (const name of NAMES) {
    const text = textIn(name);
    const [right = ""] = quantitiesIn(text).filter((one) => /^\d{3} /.test(one) && one[0] !== one[2]);
    const wrong = `${right[2]}${right[1]}${right[0]}${right.slice(3)}`;
    expect(text, name).toContain(right);
    expect(strayQuantities(text.replace(right, wrong), parts), name).toEqual([wrong]);
  }
});

test.each([
  ["homeowner, English", "not given", "not recorded", "not measured", "not logged"],
  ["homeowner, Spanish", "sin dato", "sin registrar", "sin medir", "sin registro"],
  ["file", "not given", "not recorded", "not measured", "not logged"],
] as const)(
  "%s: each row of the ledger has its four cells in order",
  (name, designed, set, measured, lived) => {
    const text = textIn(name).replaceAll(SPANISH, inEnglish);
    // A homeowner's has the lines that were measured or logged.
    const isPrinted = ({ cells }: LedgerLine) =>
      name === "file" || cells.measured.value !== null || cells.lived.value !== null;
    const rows = ledgerRows(parts, { designed, set, measured, lived }, isPrinted);
    expect(rows.length).toBeGreaterThan(10);
    expect(rows.filter((row) => !row.test(text))).toEqual([]);
  },
);

const SPANISH = /cfm\/tonelada|toneladas/g;
const inEnglish = (unit: string) => (unit === "toneladas" ? "tons" : "cfm/ton");

test("the owner’s month prints what was counted", async () => {
  const counted = Array.from({ length: 4 }, (_, tap) => ({
    value: `tap ${tap}`,
    name: `tap ${tap}`,
    jobs: 20 + tap,
    complaints: 3 * tap,
  }));
  const groups = compared("secondStageAirflowSetting", counted);
  const reported = Array.from({ length: 3 }, (_, at) => ({
    id: `${at}`,
    job: { number: 100 + at, customerName: "Łukasz O'Neil-Nguyễn" },
    kind: "too_humid",
    state: "open",
    reportedOn: `2026-07-0${at + 1}`,
  })) as unknown as readonly Callback[];
  const text = await textOf(
    monthView({
      brand: PLAIN_BRAND,
      paper: "letter",
      month: "2026-07",
      createdOn: "2026-07-31",
      revision: 1,
      reported,
      waiting: 7,
      comparisons: [{ by: "secondStageAirflowSetting", groups, words: "What they share" }],
    }),
  );
  const plain = text.replaceAll("\u00a0", " ");
  for (const { name, jobs, complaints } of counted) expect(plain).toContain(`${name} ${jobs} ${complaints} `);
  // 9 of 23 jobs: 39 %, with the 95 % interval of Wilson (1927) worked out by hand.
  expect(plain).toContain("tap 3 23 9 39 % (22 to 59 %)");
  expect(plain).toContain("Callbacks reported 3");
  expect(plain).toContain("Callbacks not closed, of any month 7");
  for (const at of [0, 1, 2]) expect(plain).toContain(`${100 + at} Łukasz O'Neil-Nguyễn`);
});

test("names from the whole Latin range and Spanish letters print in every packet", async () => {
  const name = "Łukasz O'Neil-Nguyễn y María Peña Ibáñez-Güiraldes, ¿«¡Ñandú!»?";
  const { job, brand } = parts;
  const named = {
    ...parts,
    brand: { ...brand, companyName: `Señalización Šťastný ${brand.companyName}` },
    job: { ...job, customer: { ...job.customer, name } },
  };
  for (const view of [
    homeownerPacketView(named, "en", null),
    homeownerPacketView(named, "es", null),
    crewPacketView(named),
    filePacketView(named),
    reviewPacketView(named),
  ]) {
    const { text, info } = await readPdf(await renderView(view));
    expect(text).toContain(name);
    expect(text).toContain("Señalización Šťastný");
    expect(String(info.Title)).toContain(name);
  }
});

test("the file shows the pictures of its stages, as their pages do", () => {
  const text = textIn("file").replaceAll(/\s/g, "");
  const { airflow_setup: airflow, equipment_selection: selection } = FULL_JOB.inputs;
  for (const [title, drawn] of [
    ["Capacity against airflow at design", "Chosen: setting B at 700 cfm."],
    ["The air’s way through the coil at design", "A line shows the air's way through the coil."],
    ["The ducts on the fan table", "On these ducts setting"],
    ["Where the static pressure goes", `Wet coil ${airflow.coilDropInWc}`],
    ["A hot design afternoon under these settings", "Over 480 minutes the room lay between"],
    ["Airflow setting with capacity setting, on these ducts at design", `${selection.capacitySetting}`],
  ] as const) {
    expect(text, title).toContain(title.replaceAll(/\s/g, ""));
    expect(text, title).toContain(drawn.replaceAll(/\s/g, ""));
  }
  // The setting that is chosen stands in the map with what it moves on these ducts.
  expect(text).toMatch(/B2tons700cfmfits,chosen/);
});
