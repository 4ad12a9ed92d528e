import type { TenantScope } from "@/lib/domain/scope";
import type { JudgedFigure } from "@/lib/reports/figures";
import type { HomeownerPacketView } from "@/lib/reports/homeowner/view";
import { renderView } from "@/lib/reports/render-view";
import type { BrandInput } from "@/lib/schemas/brand";
import { packetBrand, printedBrand } from "./brand";
import { ENGLISH } from "./homeowner-texts-en";
import { qrPath } from "./packet-code";

/** A packet with invented figures in a brand that is still being typed, with the logo in use. */
export async function previewBrand(scope: TenantScope, input: BrandInput): Promise<Uint8Array> {
  const { logoPng } = await packetBrand(scope);
  return renderView(invented(input, logoPng));
}

const AIRFLOW: JudgedFigure = {
  label: "Airflow, full capacity",
  value: "1,012",
  unit: "cfm",
  uncertainty: "51",
  verdict: "meets",
  aim: "935 to 1,265 cfm",
  plainWords: ENGLISH.plainWords["airflow-full"] ?? null,
  strip: { aimFrom: 20, aimTo: 80, at: 42, low: 32, high: 52 },
};

function invented(input: BrandInput, logoPng: Uint8Array | null): HomeownerPacketView {
  const { laborWarrantyYears, partsWarrantyYears, maintenanceMonths, termsWords } = input;
  const terms = [
    ...(maintenanceMonths === null
      ? []
      : [{ label: ENGLISH.maintenance, text: ENGLISH.monthsAfterStartup(maintenanceMonths) }]),
    ...(laborWarrantyYears === null
      ? []
      : [{ label: ENGLISH.laborWarranty, text: ENGLISH.afterStartup(laborWarrantyYears) }]),
    ...(partsWarrantyYears === null
      ? []
      : [{ label: ENGLISH.partsWarranty, text: ENGLISH.afterStartup(partsWarrantyYears) }]),
  ];
  return {
    language: "en",
    paper: input.paper,
    documentId: "Preview, invented figures",
    revisionNote: "",
    createdOn: "2026-07-31",
    brand: printedBrand(input, logoPng),
    job: {
      number: "1042",
      customerName: "A. Homeowner (invented)",
      addressLines: ["214 Example Landing", "Anytown"],
      systemLine: "3-ton two-stage heat pump",
      dates: [{ label: ENGLISH.startup, text: "2026-07-31" }, ...terms],
    },
    promise: {
      words: ENGLISH.promise,
      setpoint: { label: ENGLISH.temperature, value: "75", unit: "°F" },
      humidityLimit: { label: ENGLISH.humidityAtMost, value: "55", unit: "%" },
    },
    forecast: null,
    inShort: [{ sentence: ENGLISH.movedAir("1,012 cfm"), verdict: "meets" }],
    installed: {
      equipment: [],
      capacitySetting: { label: ENGLISH.setTo, text: "2.5 tons" },
      demoData: false,
    },
    howItIsSet: [],
    measured: [{ heading: "Airflow", figures: [AIRFLOW] }],
    ledger: [],
    lived: null,
    howToRun: ENGLISH.howToRun,
    terms: { dates: terms, words: termsWords === "" ? [] : [termsWords] },
    whenToCall: ENGLISH.whenToCall,
    cautions: ENGLISH.cautions,
    privatePage: {
      href: "https://example.com",
      until: "2028-07-30",
      qr: qrPath("https://example.com"),
    },
  };
}
