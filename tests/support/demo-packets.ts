import { scopeOfMember } from "@/lib/auth/scope";
import { options } from "@/lib/db/options";
import { unscopedPerson, unscopedSignInUser } from "@/lib/db/unscoped/people";
import { withTenant } from "@/lib/db/with-tenant";
import { asId } from "@/lib/domain/ids";
import { PACKET_KINDS, type PacketLanguage, type PacketPaper } from "@/lib/domain/packets";
import type { TenantScope } from "@/lib/domain/scope";
import type { PrintedView } from "@/lib/reports/render-view";
import { jobListSchema } from "@/lib/schemas/job";
import { homeownerPacketView } from "@/lib/services/homeowner-packet-view";
import { listJobs } from "@/lib/services/job-table";
import { getJob } from "@/lib/services/jobs";
import { keepForecast } from "@/lib/services/keep-forecast";
import { packetParts } from "@/lib/services/packet-parts";
import { crewPacketView } from "@/lib/services/packet-views/crew";
import { filePacketView } from "@/lib/services/packet-views/file";
import type { PacketParts } from "@/lib/services/packet-views/parts";
import { reviewPacketView } from "@/lib/services/packet-views/review";
import { DEMO_COMPANIES } from "@/seed/companies";

/** One packet of a job of the demo: what it is made of, and what it prints. */
export type DemoPacket = {
  readonly name: string;
  readonly parts: PacketParts;
  readonly view: PrintedView;
};

const STAMP = { documentId: "Job, packet 1", revisionNote: "", createdOn: "2026-11-26" } as const;
const HREF = "https://example.com/packet/0123456789012345678901234567890123456789012345678901234567890123";

/** The owner of each company of the demo. */
export async function demoScopes(): Promise<readonly (readonly [string, TenantScope])[]> {
  const scopes: (readonly [string, TenantScope])[] = [];
  for (const { name, people } of DEMO_COMPANIES) {
    const user = await unscopedSignInUser(people.owner.email);
    const known = user && (await unscopedPerson(asId<"user">(user.id)));
    const company = known?.companies.find(({ tenantName }) => tenantName === name);
    const scope = user && company ? await scopeOfMember(user.id, company.tenantId) : null;
    if (!scope) throw new Error(`${name} is not in the database.`);
    scopes.push([name, scope]);
  }
  return scopes;
}

/** Keeps the forecasts that the running application would keep in the background. */
export async function keepDemoForecasts(scopes: readonly TenantScope[]): Promise<void> {
  for (const scope of scopes) {
    for (const { id } of await demoJobs(scope)) {
      const [option] = await withTenant(scope, async () => {
        const job = await getJob(scope, id);
        return [await options(scope).choice(job.id)];
      });
      if (option) await keepForecast(scope, id, null, async () => undefined);
    }
  }
}

/** The numbers of all jobs of a company, the oldest first. */
export async function demoJobs(scope: TenantScope): Promise<readonly { id: string; number: number }[]> {
  const { jobs } = await listJobs(scope, jobListSchema.parse({}));
  return jobs.map(({ id, number }) => ({ id, number })).toSorted((one, other) => one.number - other.number);
}

/** Every packet of one job: all kinds, the homeowner's in both languages. */
export function demoPackets(
  scope: TenantScope,
  jobId: string,
  paper: PacketPaper,
): Promise<readonly DemoPacket[]> {
  return withTenant(
    scope,
    async () => {
      const job = await getJob(scope, jobId);
      const packets: DemoPacket[] = [];
      for (const kind of PACKET_KINDS) {
        for (const language of kind === "homeowner" ? (["en", "es"] as const) : (["en"] as const)) {
          const parts = { ...(await packetParts(scope, job, { kind, paper, language })), ...STAMP };
          const name = `${job.number}-${kind}${language === "en" ? "" : "-es"}-${paper}`;
          packets.push({ name, parts, view: viewOf(parts, kind, language) });
        }
      }
      return packets;
    },
    { timeoutMs: 120_000 },
  );
}

function viewOf(
  parts: PacketParts,
  kind: (typeof PACKET_KINDS)[number],
  language: PacketLanguage,
): PrintedView {
  const link = { href: HREF, tokenHash: "", expiresAt: new Date("2028-11-25T00:00:00Z") };
  if (kind === "homeowner") return homeownerPacketView(parts, language, link);
  if (kind === "crew") return crewPacketView(parts);
  return kind === "file" ? filePacketView(parts) : reviewPacketView(parts);
}
