import { createHash } from "node:crypto";
import { movedOn } from "@/lib/db/catalog-errors";
import { type Brand, company } from "@/lib/db/company";
import { withTenant } from "@/lib/db/with-tenant";
import type { PacketLanguage } from "@/lib/domain/packets";
import type { TenantScope } from "@/lib/domain/scope";
import { notFound } from "@/lib/errors";
import { cleanLogo } from "@/lib/files/clean-logo";
import { readStoredFile, storeFile } from "@/lib/files/store";
import type { PacketBrand } from "@/lib/reports/homeowner/view";
import type { BrandInput } from "@/lib/schemas/brand";

/** The product's own accent, until a company sets one. */
const OWN_ACCENT = "#1f4f7a";

export type BrandView = Omit<BrandInput, "addressLines" | "startedFrom"> & {
  readonly addressText: string;
  readonly startedFrom: string;
  readonly logoHref: string | null;
};

/** What the brand form starts with: what is kept, or the company's name on a plain sheet. */
export async function brandView(scope: TenantScope): Promise<BrandView> {
  const { logo, addressLines, ...brand } = await currentBrand(scope);
  return {
    ...brand,
    addressText: addressLines.join("\n"),
    startedFrom: markOf({ ...brand, addressLines }),
    logoHref: logo ? `/api/brand/logo?v=${logo.sha256.slice(0, 12)}` : null,
  };
}

/** @throws AppError `CONFLICT` when another owner has saved since the form was opened. */
export function saveBrand(scope: TenantScope, { startedFrom, ...input }: BrandInput): Promise<void> {
  return change(scope, ({ logo, ...brand }) => {
    if (startedFrom !== undefined && startedFrom !== markOf(brand)) throw movedOn();
    return { ...input, logo };
  });
}

/** The same for the same words, in whatever order they stand. */
function markOf(brand: Omit<Brand, "logo">): string {
  const sorted = Object.entries(brand).toSorted(([one], [other]) => (one < other ? -1 : 1));
  return createHash("sha256").update(JSON.stringify(sorted)).digest("hex");
}

/** Keeps a cleaned copy of the uploaded picture as the logo. */
export async function saveLogo(scope: TenantScope, bytes: Uint8Array): Promise<void> {
  const { sha256, mime } = await storeFile(scope.tenantId, await cleanLogo(bytes), "logo", "logo");
  await change(scope, (brand) => ({ ...brand, logo: { storageKey: sha256, mime, sha256 } }));
}

/** Takes the logo off. Its bytes stay, because packets made so far may show it. */
export function removeLogo(scope: TenantScope): Promise<void> {
  return change(scope, (brand) => ({ ...brand, logo: null }));
}

export async function readLogo(
  scope: TenantScope,
): Promise<{ readonly bytes: Uint8Array; readonly mime: string }> {
  const { logo } = await currentBrand(scope);
  if (!logo) throw notFound();
  return { bytes: await readStoredFile(scope.tenantId, logo.storageKey), mime: logo.mime };
}

/** One transaction as if alone: a logo sent while another owner saves the form is not lost. */
function change(scope: TenantScope, to: (brand: Brand) => Brand): Promise<void> {
  return withTenant(scope, async () => company(scope).saveBrand(to(await currentBrand(scope))), {
    isolation: "Serializable",
  });
}

async function currentBrand(scope: TenantScope): Promise<Brand> {
  const kept = await company(scope).brand();
  if (kept) return kept;
  const { name } = await company(scope).get();
  return {
    displayName: name,
    licenseLine: "",
    phone: "",
    email: "",
    website: "",
    addressLines: [],
    accentColor: OWN_ACCENT,
    coverWords: "",
    closingWords: "",
    coverWordsEs: "",
    closingWordsEs: "",
    termsWords: "",
    termsWordsEs: "",
    paper: "letter",
    coverStyle: "ledger",
    partsWarrantyYears: null,
    laborWarrantyYears: null,
    maintenanceMonths: null,
    logo: null,
  };
}

/** The brand as a packet prints it. */
export async function packetBrand(scope: TenantScope, language: PacketLanguage = "en"): Promise<PacketBrand> {
  const brand = await currentBrand(scope);
  const logoPng = brand.logo ? await readStoredFile(scope.tenantId, brand.logo.storageKey) : null;
  return printedBrand(brand, logoPng, language);
}

/** A brand as paper shows it, kept or still being typed. Words missing in Spanish stand in English. */
export function printedBrand(
  brand: Omit<Brand, "logo">,
  logoPng: Uint8Array | null,
  language: PacketLanguage = "en",
): PacketBrand {
  const { partsWarrantyYears, laborWarrantyYears, maintenanceMonths } = brand;
  const inLanguage = (english: string, spanish: string) =>
    language === "es" && spanish !== "" ? spanish : english;
  return {
    companyName: brand.displayName,
    logoPng,
    accentHex: brand.accentColor,
    licenceLine: brand.licenseLine,
    contactLines: [...brand.addressLines, brand.phone, brand.email, brand.website].filter(
      (line) => line !== "",
    ),
    coverWords: inLanguage(brand.coverWords, brand.coverWordsEs),
    closingWords: inLanguage(brand.closingWords, brand.closingWordsEs),
    termsWords: inLanguage(brand.termsWords, brand.termsWordsEs),
    coverStyle: brand.coverStyle,
    terms: { partsWarrantyYears, laborWarrantyYears, maintenanceMonths },
  };
}

/** The paper a company prints on, until another is chosen for a packet. */
export async function brandPaper(scope: TenantScope): Promise<BrandInput["paper"]> {
  return (await currentBrand(scope)).paper;
}
