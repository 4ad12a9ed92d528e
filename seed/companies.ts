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
      coverWordsEs:
        "Gracias por confiarnos su casa. Este cuaderno es el registro de su sistema: lo que prometimos, lo que instalamos, cómo lo ajustamos y lo que leyeron nuestros instrumentos antes de irnos.\nGuárdelo con la casa.",
      closingWordsEs:
        "Después de las primeras semanas de verano leemos el registro de humedad de su casa y le decimos lo que muestra. Pregúntenos lo que quiera antes de eso.",
      termsWords:
        "Parts are warranted by the maker, labor by us, where maintenance was done when it was due. Filters, and damage by flood or lightning, are not covered.",
      termsWordsEs:
        "Las piezas las garantiza el fabricante y la mano de obra nosotros, si el mantenimiento se hizo a su tiempo. No cubre filtros ni daños por inundación o rayos.",
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
      coverWordsEs: "Medido, no adivinado. Esto es lo que recibió su casa.",
      closingWordsEs: "Una familia, un taller, un número. Contestamos nosotros.",
      termsWords: "Call us first, whatever it is: we find out whose warranty it is.",
      termsWordsEs: "Llámenos primero, sea lo que sea: nosotros averiguamos de quién es la garantía.",
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
