import { humidityChart } from "@/lib/charts/humidity-chart";
import { cleanLogo } from "@/lib/files/clean-logo";
import type { JudgedFigure, RangeStrip } from "@/lib/reports/figures";
import type { HomeownerPacketView, LedgerCell, PacketBrand } from "@/lib/reports/homeowner/view";

/** Two companies that look nothing alike, and packets from full to bare. All invented. */

const NO_TERMS = { partsWarrantyYears: null, laborWarrantyYears: null, maintenanceMonths: null };

const svg = (text: string) => new TextEncoder().encode(text);

const LEVEE_LOGO = svg(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 420 110">
<rect x="0" y="8" width="94" height="94" rx="10" fill="#0f4c5c"/>
<path d="M14 62c14-14 26-14 36 0s22 14 32 0" stroke="#ffffff" stroke-width="7" fill="none"/>
<path d="M14 82c14-14 26-14 36 0s22 14 32 0" stroke="#9fd3c7" stroke-width="5" fill="none"/>
<circle cx="47" cy="34" r="11" fill="#ffffff"/>
<text x="112" y="58" font-family="DejaVu Sans" font-size="40" font-weight="bold" fill="#0f4c5c">Levee Road</text>
<text x="113" y="92" font-family="DejaVu Sans" font-size="24" fill="#0f4c5c">home comfort</text></svg>`);

export async function leveeRoad(): Promise<PacketBrand> {
  return {
    companyName: "Levee Road Home Comfort",
    logoPng: await cleanLogo(LEVEE_LOGO),
    accentHex: "#0f4c5c",
    licenceLine: "State mechanical licence 00-1234 (demo)",
    contactLines: [
      "118 Levee Road, Bayou Vista",
      "555-0142, answered day and night",
      "office@leveeroad.example",
    ],
    coverWords:
      "Thank you for letting us into your home. This packet is the record of your system: what we promised, what we put in, how we set it and what our instruments read before we left. Keep it with the house.",
    closingWords:
      "We will look at your home's own humidity readings after the first summer weeks and send you what they show.",
    termsWords: "Parts by the maker, labor by us.",
    coverStyle: "ledger",
    terms: NO_TERMS,
  };
}

export const sunfield: PacketBrand = {
  companyName: "Sunfield Heating & Cooling, a family business since 1987",
  logoPng: null,
  accentHex: "#ffb703",
  licenceLine: "Class A contractor 98-7654 (demo)",
  contactLines: ["555-0177"],
  coverWords: "",
  closingWords: "",
  termsWords: "",
  coverStyle: "band",
  terms: NO_TERMS,
};

const strip = (aimFrom: number, aimTo: number, at: number, half: number): RangeStrip => ({
  aimFrom,
  aimTo,
  at,
  low: at - half,
  high: at + half,
});

const figure = (
  label: string,
  value: string | null,
  unit: string,
  rest: Partial<JudgedFigure> = {},
): JudgedFigure => ({
  label,
  value,
  unit,
  verdict: value === null ? "not measured" : rest.aim === undefined ? null : "meets",
  aim: null,
  plainWords: null,
  strip: null,
  ...rest,
});

const cell = (value: string, unit: string, uncertainty?: string): LedgerCell => ({
  value,
  unit,
  uncertainty,
});

/** A smooth invented summer: 21 days of half-hourly readings with one gap of a day and a half. */
function summerChart() {
  const start = Date.UTC(2026, 6, 6);
  const readings = Array.from({ length: 21 * 48 }, (_, n) => ({
    atMs: start + n * 1_800_000,
    relativeHumidityPercent:
      n > 500 && n < 572
        ? null
        : 50 + 3.4 * Math.sin(n / 7.6) + 3.1 * Math.sin(n / 61) + 0.7 * Math.sin(n * 1.7),
  }));
  return humidityChart({
    readings,
    band: { lowPercent: 40, highPercent: 55 },
    gapAfterMinutes: 90,
    timeZone: "America/Chicago",
    width: 720,
  });
}

export async function fullPacket(): Promise<HomeownerPacketView> {
  return {
    language: "en",
    paper: "letter",
    documentId: "P-1042-7F3A",
    revisionNote: "Revision 2, replaces revision 1 of 2026-06-02",
    createdOn: "2026-07-31",
    brand: await leveeRoad(),
    job: {
      number: "1042",
      customerName: "Łukasz O'Neil-Nguyễn and María Peña Ibáñez",
      addressLines: ["214 Cypress Landing", "Bayou Vista"],
      systemLine: "3-ton two-stage heat pump, whole house",
      dates: [
        { label: "Installed", text: "2026-05-28" },
        { label: "Started up", text: "2026-06-02" },
        { label: "Next maintenance", text: "2027-04" },
        { label: "Parts warranty ends", text: "2036-05-28" },
      ],
    },
    promise: {
      words:
        "On a design summer day your home stays at the setpoint, and on all but a few days a year its humidity stays at or below the limit.",
      setpoint: { label: "Cool: summer setpoint", value: "75", unit: "°F" },
      humidityLimit: { label: "Dry: humidity at most", value: "55", unit: "%" },
    },
    forecast: null,
    inShort: [
      { sentence: "The system gives the cooling your home needs on a design day.", verdict: "meets" },
      {
        sentence: "It takes the water out of the air that your home's moisture load asks for.",
        verdict: "can't tell",
      },
      {
        sentence: "The duct system lets the air through as the blower's maker allows.",
        verdict: "falls short",
      },
      { sentence: "Your home's own log of the first summer weeks.", verdict: "meets" },
    ],
    installed: {
      equipment: [
        { label: "Outdoor unit", text: "Heat pump HP-36 of the demo maker Northbank, two stages" },
        {
          label: "Indoor unit",
          text: "Air handler AH-36 of the demo maker Northbank, variable-speed blower",
        },
        { label: "Thermostat", text: "Wall control WC-2 of the demo maker Northbank, with humidity sensor" },
        { label: "Filter", text: "16 × 25 × 4 in., in the return at the hall ceiling" },
      ],
      capacitySetting: { label: "Capacity setting", text: "B, 2.5 tons at the second stage" },
      demoData: true,
    },
    howItIsSet: [
      {
        name: "First-stage start offset",
        setTo: "1.0 °F above setpoint",
        why: "Longer, fewer runs: water leaves only while the coil stays cold.",
      },
      {
        name: "Second-stage start offset",
        setTo: "2.5 °F above setpoint",
        why: "The second stage comes only when the first cannot hold the house.",
      },
      {
        name: "Minimum compressor run",
        setTo: "8 min",
        why: "A shorter run wets the coil but drains little.",
      },
      {
        name: "Fan run-on after cooling",
        setTo: "off",
        why: "A fan on a wet coil puts the water back into the air.",
      },
      { name: "Fan between calls", setTo: "off", why: "The same reason as above." },
      {
        name: "Cooling past setpoint allowance",
        setTo: "2 °F",
        why: "On damp, mild days the house may be cooled a little further to dry it.",
      },
      {
        name: "Indoor humidity correction",
        setTo: null,
        why: "Compared with a reference instrument when the home is visited.",
      },
    ],
    measured: [
      {
        heading: "First stage",
        figures: [
          figure("Airflow", "742", "cfm", {
            uncertainty: "37",
            aim: "700 to 800 cfm",
            plainWords: "How much air the blower moves through the house each minute.",
            strip: strip(30, 70, 47, 15),
          }),
          figure("Delivered total", "21,300", "Btu/h", {
            uncertainty: "1,900",
            aim: "at least 19,800 Btu/h",
            plainWords: "All the heat taken out of the air, dry and damp together.",
            strip: strip(38, 100, 55, 20),
            verdict: "can't tell",
          }),
          figure("Delivered sensible", "15,100", "Btu/h", {
            uncertainty: "900",
            plainWords: "The part that lowers the temperature.",
          }),
          figure("Delivered latent", "6,200", "Btu/h", {
            uncertainty: "1,700",
            plainWords: "The part that dries the air.",
          }),
        ],
      },
      {
        heading: "Second stage",
        figures: [
          figure("Airflow", "1,012", "cfm", {
            uncertainty: "51",
            aim: "950 to 1,050 cfm",
            plainWords: "How much air the blower moves through the house each minute.",
            strip: strip(30, 70, 54, 20),
            verdict: "can't tell",
          }),
          figure("Delivered total", "29,600", "Btu/h", {
            uncertainty: "2,400",
            aim: "at least 26,400 Btu/h",
            plainWords: "All the heat taken out of the air, dry and damp together.",
            strip: strip(38, 100, 70, 22),
          }),
          figure("Moisture removal", "7.8", "lb/h", {
            uncertainty: "1.6",
            aim: "at least 6.9 lb/h",
            plainWords: "Water that leaves by the drain while the system runs: about a gallon an hour.",
            strip: strip(40, 100, 52, 22),
            verdict: "can't tell",
          }),
          figure("Moisture removal", "22.4", "gal/day", { plainWords: "If it ran all day." }),
          figure("External static pressure", "0.71", "in. w.c.", {
            uncertainty: "0.02",
            aim: "at most 0.50 in. w.c.",
            plainWords: "How hard the blower has to push against the ducts and the filter.",
            strip: strip(0, 50, 71, 3),
            verdict: "falls short",
          }),
          figure("Superheat", "11.2", "°F", {
            uncertainty: "1.8",
            aim: "8 to 14 °F",
            plainWords: "A sign that the refrigerant charge is right.",
            strip: strip(28, 72, 50, 13),
          }),
          figure("Subcooling", "9.6", "°F", {
            uncertainty: "1.8",
            aim: "7 to 13 °F",
            plainWords: "A second sign that the charge is right.",
            strip: strip(28, 72, 47, 13),
          }),
          figure("Supply air leakage", null, "cfm"),
        ],
      },
    ],
    ledger: [
      {
        heading: "Air",
        lines: [
          {
            label: "Airflow, first stage",
            designed: cell("750", "cfm"),
            set: cell("750", "cfm"),
            measured: cell("742", "cfm", "37"),
            lived: null,
            verdict: "meets",
          },
          {
            label: "Airflow, second stage",
            designed: cell("1,000", "cfm"),
            set: cell("1,000", "cfm"),
            measured: cell("1,012", "cfm", "51"),
            lived: null,
            verdict: "can't tell",
          },
          {
            label: "External static pressure",
            designed: cell("0.50", "in. w.c."),
            set: null,
            measured: cell("0.71", "in. w.c.", "0.02"),
            lived: null,
            verdict: "falls short",
          },
        ],
      },
      {
        heading: "Cooling and drying",
        lines: [
          {
            label: "Total capacity",
            designed: cell("26,400", "Btu/h"),
            set: cell("28,900", "Btu/h"),
            measured: cell("29,600", "Btu/h", "2,400"),
            lived: cell("28,100", "Btu/h"),
            verdict: "meets",
          },
          {
            label: "Sensible",
            designed: cell("20,100", "Btu/h"),
            set: cell("20,900", "Btu/h"),
            measured: cell("21,300", "Btu/h", "1,200"),
            lived: null,
            verdict: "meets",
          },
          {
            label: "Latent",
            designed: cell("6,300", "Btu/h"),
            set: cell("8,000", "Btu/h"),
            measured: cell("8,300", "Btu/h", "1,700"),
            lived: null,
            verdict: "meets",
          },
          {
            label: "Moisture removal",
            designed: cell("6.9", "lb/h"),
            set: cell("7.6", "lb/h"),
            measured: cell("7.8", "lb/h", "1.6"),
            lived: cell("6.6", "lb/h"),
            verdict: "can't tell",
          },
          {
            label: "Runs per hour at half load",
            designed: cell("3", "per h"),
            set: cell("3", "per h"),
            measured: null,
            lived: cell("2.6", "per h"),
            verdict: "meets",
          },
        ],
      },
      {
        heading: "House",
        lines: [
          {
            label: "Indoor temperature",
            designed: cell("75", "°F"),
            set: cell("75", "°F"),
            measured: cell("74.8", "°F", "0.9"),
            lived: cell("75.1", "°F"),
            verdict: "meets",
          },
          {
            label: "Indoor relative humidity",
            designed: cell("55", "%"),
            set: cell("55", "%"),
            measured: cell("54", "%", "3"),
            lived: cell("51", "%"),
            verdict: "meets",
          },
          {
            label: "Dry-hours",
            designed: cell("96", "%"),
            set: cell("95", "%"),
            measured: null,
            lived: cell("97", "%"),
            verdict: "meets",
          },
          {
            label: "Bath exhaust",
            designed: null,
            set: null,
            measured: null,
            lived: null,
            verdict: "not measured",
          },
        ],
      },
    ],
    lived: {
      period: "2026-07-06 to 2026-07-26",
      words:
        "For three weeks of July the house kept its promise on nearly every hour. Humidity rose above the limit on two damp evenings when little cooling was needed.",
      figures: [
        figure("Dry-hours", "97", "%", {
          aim: "at least 95 %",
          plainWords: "Share of the hours at or below the humidity limit.",
          strip: strip(50, 100, 70, 0),
        }),
        figure("Longest wet spell", "5.5", "h", {
          aim: "at most 12 h",
          plainWords: "The longest time above the limit without a break.",
          strip: strip(0, 60, 28, 0),
        }),
      ],
      chart: summerChart(),
    },
    terms: {
      dates: [{ label: "Parts warranty ends", text: "2036-05-28" }],
      words: ["Parts by the maker, labor by us."],
    },
    howToRun: [
      "Leave the thermostat at 75 °F in summer. Large changes up and down make the house damper, not cheaper.",
      "Leave the fan on “auto”. Running it all the time puts water from the coil back into the air.",
      "Change the filter every three months, and more often while there is building work.",
      "Run the bath fan while you shower and for twenty minutes after; run the range hood while you cook.",
      "Keep windows closed on damp days, even when the evening feels cool.",
    ],
    whenToCall: [
      "The humidity reads above 60 % for more than a day while the system runs.",
      "Water stands in the pan below the indoor unit, or no water leaves the drain on a humid day.",
      "Ice on the copper lines or on the outdoor unit in summer.",
      "The outdoor unit starts and stops more often than every ten minutes.",
    ],
    privatePage: null,
    cautions: [
      "Do not open the panels of either unit. Inside are mains voltage and refrigerant under pressure; work on them is for licensed and certified people, by local codes and the manufacturer's instructions.",
      "If you have a gas appliance, keep a carbon monoxide alarm on each floor. If it sounds, leave the house and call for help from outside.",
    ],
  };
}

/** A job of which little is known, by a company with a weak colour, no logo and no words of its own. */
export function sparsePacket(): HomeownerPacketView {
  return {
    language: "en",
    paper: "a4",
    documentId: "P-7-0001",
    revisionNote: "",
    createdOn: "2026-11-02",
    brand: sunfield,
    job: {
      number: "7",
      customerName: "D. Ortiz",
      addressLines: [],
      systemLine: "System not chosen",
      dates: [],
    },
    promise: {
      words: "",
      setpoint: { label: "Cool: summer setpoint", value: "76", unit: "°F" },
      humidityLimit: { label: "Dry: humidity at most", value: null, unit: "%" },
    },
    forecast: null,
    inShort: [],
    installed: {
      equipment: [],
      capacitySetting: { label: "Capacity setting", text: "not recorded" },
      demoData: false,
    },
    howItIsSet: [],
    measured: [],
    ledger: [],
    lived: null,
    terms: { dates: [], words: [] },
    howToRun: [],
    whenToCall: [],
    cautions: [],
    privatePage: null,
  };
}
