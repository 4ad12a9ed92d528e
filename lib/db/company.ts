import type { TenantScope } from "@/lib/domain/scope";
import { appendActivity } from "./activity";
import { asJson } from "./json";
import { withTenant } from "./with-tenant";

export type Company = { readonly name: string; readonly timeZone: string };

export type Brand = {
  readonly displayName: string;
  readonly licenseLine: string;
  readonly phone: string;
  readonly email: string;
  readonly website: string;
  readonly addressLines: readonly string[];
  readonly accentColor: string;
  readonly coverWords: string;
  readonly closingWords: string;
  /** The same for packets in Spanish; empty: the others stand there too. */
  readonly coverWordsEs: string;
  readonly closingWordsEs: string;
  /** What warranty and maintenance cover. */
  readonly termsWords: string;
  readonly termsWordsEs: string;
  readonly paper: "letter" | "a4";
  readonly coverStyle: "ledger" | "band";
  /** Standard terms; `null`: nothing is promised. */
  readonly partsWarrantyYears: number | null;
  readonly laborWarrantyYears: number | null;
  readonly maintenanceMonths: number | null;
  readonly logo: { readonly storageKey: string; readonly mime: string; readonly sha256: string } | null;
};

export function company(scope: TenantScope) {
  const own = { tenantId: scope.tenantId };
  return {
    get: (): Promise<Company> =>
      withTenant(scope, (tx) =>
        tx.tenant.findFirstOrThrow({ where: { id: scope.tenantId }, select: { name: true, timeZone: true } }),
      ),

    /** When the company was founded here, an ISO text. */
    foundedAt: (): Promise<string> =>
      withTenant(scope, async (tx) => {
        const { createdAt } = await tx.tenant.findFirstOrThrow({
          where: { id: scope.tenantId },
          select: { createdAt: true },
        });
        return createdAt.toISOString();
      }),

    brand: (): Promise<Brand | null> =>
      withTenant(scope, async (tx) => {
        const row = await tx.brand.findFirst({ where: own });
        if (!row) return null;
        const { logoStorageKey, logoMime, logoSha256 } = row;
        return {
          displayName: row.displayName,
          licenseLine: row.licenseLine,
          phone: row.phone,
          email: row.email,
          website: row.website,
          addressLines: row.addressLines,
          accentColor: row.accentColor,
          coverWords: row.coverWords,
          closingWords: row.closingWords,
          coverWordsEs: row.coverWordsEs,
          closingWordsEs: row.closingWordsEs,
          termsWords: row.termsWords,
          termsWordsEs: row.termsWordsEs,
          paper: row.paper === "a4" ? "a4" : "letter",
          coverStyle: row.coverStyle === "band" ? "band" : "ledger",
          partsWarrantyYears: row.partsWarrantyYears,
          laborWarrantyYears: row.laborWarrantyYears,
          maintenanceMonths: row.maintenanceMonths,
          logo:
            logoStorageKey && logoMime && logoSha256
              ? { storageKey: logoStorageKey, mime: logoMime, sha256: logoSha256 }
              : null,
        };
      }),

    saveBrand: (brand: Brand): Promise<void> =>
      withTenant(scope, async (tx) => {
        const { logo, addressLines, ...rest } = brand;
        const last = await tx.brand.findFirst({ where: own });
        const row = {
          ...rest,
          addressLines: [...addressLines],
          logoStorageKey: logo?.storageKey ?? null,
          logoMime: logo?.mime ?? null,
          logoSha256: logo?.sha256 ?? null,
          updatedBy: scope.userId,
        };
        await tx.brand.upsert({
          where: own,
          create: { ...own, ...row },
          update: { ...row, version: { increment: 1 }, updatedAt: new Date() },
        });
        await appendActivity(tx, scope, {
          action: "brand changed",
          entity: "brand",
          entityId: null,
          ...(last ? { before: trailOf(last) } : {}),
          after: trailOf(row),
        });
      }),

    /** The limits this company has set; what is absent keeps the seed value. */
    limitOverrides: (): Promise<Readonly<Record<string, number>>> =>
      withTenant(scope, async (tx) => {
        const row = await tx.ruleLimits.findFirst({
          where: own,
          orderBy: { revision: "desc" },
          select: { values: true },
        });
        return (row?.values ?? {}) as Record<string, number>;
      }),

    limitHistory: () =>
      withTenant(scope, async (tx) => {
        const rows = await tx.ruleLimits.findMany({
          where: own,
          orderBy: { revision: "desc" },
          include: { createdByMember: { select: { name: true } } },
        });
        return rows.map((row) => ({
          revision: row.revision,
          values: row.values as Record<string, number>,
          reason: row.reason,
          at: row.createdAt.toISOString(),
          byName: row.createdByMember.name,
        }));
      }),

    setLimits: (values: Readonly<Record<string, number>>, reason: string): Promise<void> =>
      withTenant(scope, async (tx) => {
        const last = await tx.ruleLimits.findFirst({ where: own, orderBy: { revision: "desc" } });
        await tx.ruleLimits.create({
          data: {
            ...own,
            revision: (last?.revision ?? 0) + 1,
            values: asJson(values),
            reason,
            createdBy: scope.userId,
          },
        });
        await appendActivity(tx, scope, {
          action: "rule limits changed",
          entity: "rule limits",
          entityId: null,
          before: last?.values ?? {},
          after: values,
          reason,
        });
      }),
  };
}

/** What the trail tells of a brand. Of a logo only whether it is the same: its bytes are named by their hash. */
function trailOf(
  row: Omit<Brand, "logo" | "paper" | "coverStyle"> & {
    readonly paper: string;
    readonly coverStyle: string;
    readonly logoSha256: string | null;
  },
) {
  const { displayName, licenseLine, phone, email, website, addressLines, accentColor, logoSha256 } = row;
  const { coverWords, closingWords, coverWordsEs, closingWordsEs, termsWords, termsWordsEs } = row;
  const { paper, coverStyle } = row;
  const { partsWarrantyYears, laborWarrantyYears, maintenanceMonths } = row;
  const logo = logoSha256?.slice(0, 8) ?? null;
  const inSpanish = { coverWordsEs, closingWordsEs, termsWordsEs };
  const words = { coverWords, closingWords, termsWords, ...inSpanish, paper, coverStyle };
  const terms = { partsWarrantyYears, laborWarrantyYears, maintenanceMonths };
  return {
    displayName,
    licenseLine,
    phone,
    email,
    website,
    addressLines,
    accentColor,
    logo,
    ...words,
    ...terms,
  };
}
