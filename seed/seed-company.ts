import { readFile } from "node:fs/promises";
import path from "node:path";
import { makeSecret } from "@/lib/auth/one-time-secret";
import { hashPassword } from "@/lib/auth/password";
import { scopeOfMember } from "@/lib/auth/scope";
import { members } from "@/lib/db/members";
import { unscopedFoundCompany, unscopedPerson, unscopedSignInUser } from "@/lib/db/unscoped/people";
import { withTenant } from "@/lib/db/with-tenant";
import { asId } from "@/lib/domain/ids";
import type { TenantScope } from "@/lib/domain/scope";
import { jobListSchema } from "@/lib/schemas/job";
import { saveBrand, saveLogo } from "@/lib/services/brand";
import { listJobs } from "@/lib/services/job-table";
import { acceptInvitation } from "@/lib/services/people";
import { addWeatherFile } from "@/lib/services/weather";
import type { DemoCompany } from "./companies";
import { seedCatalog } from "./seed-catalog";
import { DEMO_PASSWORD, type DemoPerson } from "./sign-ins";

const A_DAY_MS = 86_400_000;
const WEATHER_NOTE =
  "Typical year by the National Renewable Energy Laboratory for the United States Department of Energy; public data.";

/**
 * Makes one company, its people, and everything else in a single transaction: an interrupted seed leaves
 * at most a company with some of its people, and the next one goes on from there. A company that has a
 * job is complete.
 */
export async function seedCompany(demo: DemoCompany): Promise<void> {
  const owner = (await findOwnersScope(demo)) ?? (await found(demo));
  if (await hasJobs(owner)) return;
  const scopeOf = async (person: DemoPerson) => (await findScope(person, demo)) ?? invite(owner, person);
  for (const person of Object.values(demo.people)) await scopeOf(person);
  const scopes = {
    owner,
    office: await scopeOf(demo.people.office),
    tech: await scopeOf(demo.people.tech),
    secondTech: await scopeOf(demo.people.secondTech),
  };
  const { office, tech, secondTech } = demo.people;
  const epw = await readFile(path.join(import.meta.dirname, "weather", demo.weather.file));
  await withTenant(
    owner,
    async () => {
      await saveBrand(owner, demo.brand);
      await saveLogo(owner, new TextEncoder().encode(demo.logoSvg));
      const weatherFileId = await addWeatherFile(scopes.office, {
        name: demo.weather.name,
        sourceNote: WEATHER_NOTE,
        bytes: epw,
      });
      await demo.seedJobs({
        scopes,
        names: {
          owner: demo.people.owner.name,
          office: office.name,
          tech: tech.name,
          secondTech: secondTech.name,
        },
        weatherFileId,
        ...(await seedCatalog(scopes.office)),
      });
    },
    { timeoutMs: 120_000 },
  );
}

async function found(demo: DemoCompany): Promise<TenantScope> {
  const { email, name } = demo.people.owner;
  await unscopedFoundCompany({
    companyName: demo.name,
    timeZone: demo.timeZone,
    owner: { email, name, passwordHash: await hashPassword(DEMO_PASSWORD) },
  });
  return required(await findOwnersScope(demo), demo.people.owner);
}

async function invite(owner: TenantScope, person: DemoPerson): Promise<TenantScope> {
  const { secret, hash } = makeSecret();
  const expiresAt = new Date(Date.now() + A_DAY_MS);
  await members(owner).invite({ ...person, tokenHash: hash, expiresAt });
  await acceptInvitation({ secret, password: DEMO_PASSWORD });
  const user = await unscopedSignInUser(person.email);
  return required(user && (await scopeOfMember(user.id, owner.tenantId)), person);
}

function findOwnersScope(demo: DemoCompany): Promise<TenantScope | null> {
  return findScope(demo.people.owner, demo);
}

async function findScope(person: DemoPerson, demo: DemoCompany): Promise<TenantScope | null> {
  const user = await unscopedSignInUser(person.email);
  if (!user) return null;
  const known = await unscopedPerson(asId<"user">(user.id));
  const company = known?.companies.find((one) => one.tenantName === demo.name);
  return company ? scopeOfMember(user.id, company.tenantId) : null;
}

function required(scope: TenantScope | null, person: DemoPerson): TenantScope {
  if (!scope) throw new Error(`${person.email} joined and is not a member.`);
  return scope;
}

async function hasJobs(scope: TenantScope): Promise<boolean> {
  return (await listJobs(scope, jobListSchema.parse({}))).jobs.length > 0;
}
