import type { BrandInput } from "@/lib/schemas/brand";
import { seedHickoraneJobs } from "./jobs/hickorane";
import { seedTidewillowJobs } from "./jobs/tidewillow";
import { HICKORANE_LOGO, TIDEWILLOW_LOGO } from "./logos";
import { type DemoPerson, HICKORANE_PEOPLE, TIDEWILLOW_PEOPLE } from "./sign-ins";
import type { DemoWorld } from "./world";

export type DemoCompany = {
  readonly name: string;
  readonly timeZone: string;
  readonly people: Readonly<Record<"owner" | "office" | "tech" | "secondTech", DemoPerson>> &
    Readonly<Record<string, DemoPerson>>;
  readonly brand: BrandInput;
  readonly logoSvg: string;
  readonly weather: { readonly file: string; readonly name: string };
  readonly seedJobs: (world: DemoWorld) => Promise<void>;
};

/** Two invented companies in two climates, made to look different from each other. */
export const DEMO_COMPANIES: readonly DemoCompany[] = [
  {
    name: "Tidewillow Comfort (demo)",
    timeZone: "America/Chicago",
    people: TIDEWILLOW_PEOPLE,
    brand: {
      displayName: "Tidewillow Comfort",
      licenseLine: "Demo license TX-0000 (invented)",
      phone: "555-0100",
      email: "office@tidewillow.example",
      website: "https://tidewillow.example",
      addressLines: ["12 Gullwing Landing", "Heronport, TX 77000", "Demo company, not a real place"],
      accentColor: "#0b6e6e",
      coverWords:
        "Thank you for trusting us with your home. This packet is the record of your system: what we promised, what we installed, how we set it and what our instruments read before we left.\nKeep it with the house.",
      closingWords:
        "After the first summer weeks we read your home’s own humidity log and tell you what it shows. Ask us anything before then.",
      paper: "letter",
      coverStyle: "ledger",
      partsWarrantyYears: 10,
      laborWarrantyYears: 2,
      maintenanceMonths: 12,
    },
    logoSvg: TIDEWILLOW_LOGO,
    weather: { file: "houston-2a.epw", name: "Houston, typical year (TMY2)" },
    seedJobs: seedTidewillowJobs,
  },
  {
    name: "Hickorane Heating & Air (demo)",
    timeZone: "America/Indiana/Indianapolis",
    people: HICKORANE_PEOPLE,
    brand: {
      displayName: "Hickorane Heating & Air",
      licenseLine: "Demo license IN-0000 (invented)",
      phone: "555-0150",
      email: "office@hickorane.example",
      website: "https://hickorane.example",
      addressLines: ["400 Threshing Row", "Millgate Junction, IN 46000", "Demo company, not a real place"],
      accentColor: "#9c2f1f",
      coverWords: "Measured, not guessed. Here is what your house got.",
      closingWords: "One family, one shop, one number. We answer it.",
      paper: "a4",
      coverStyle: "band",
      partsWarrantyYears: 5,
      laborWarrantyYears: 1,
      maintenanceMonths: 6,
    },
    logoSvg: HICKORANE_LOGO,
    weather: { file: "indianapolis-tmy3.epw", name: "Indianapolis, typical year (TMY3)" },
    seedJobs: seedHickoraneJobs,
  },
];
