import { Client } from "pg";
import { env } from "@/lib/env";
import { DEMO_COMPANIES } from "./companies";
import { seedCompany } from "./seed-company";
import { DEMO_PASSWORD, type DemoPerson } from "./sign-ins";

/** Any number, the same in all seeds of one database. */
const LOCK = 7_201_161_126;

export type DemoSignIn = DemoPerson & { readonly companies: readonly string[]; readonly password: string };

/**
 * Makes the demo's two companies where they are missing, in the database the settings name, and finishes
 * what an interrupted seed left. Nothing of a complete company is touched.
 *
 * @returns Who can sign in, also when nothing was made.
 */
export async function seedDemo(): Promise<readonly DemoSignIn[]> {
  const client = new Client({ connectionString: env().DATABASE_URL });
  // A server that stops ends this session too; whatever was going on then says so itself.
  client.on("error", () => undefined);
  await client.connect();
  try {
    // Of two seeds at once, the second waits and then finds everything made. The session's end frees the lock.
    await client.query("SELECT pg_advisory_lock($1)", [LOCK]);
    for (const company of DEMO_COMPANIES) await seedCompany(company);
  } finally {
    await client.end();
  }
  return demoSignIns();
}

/** Each person once, with every company they belong to. */
export function demoSignIns(): readonly DemoSignIn[] {
  const all = DEMO_COMPANIES.flatMap(({ name, people }) =>
    Object.values(people).map((person) => ({ person, name })),
  );
  const emails = [...new Set(all.map(({ person }) => person.email))];
  return emails.flatMap((email) => {
    const own = all.filter(({ person }) => person.email === email);
    const [first] = own;
    return first
      ? [{ ...first.person, companies: own.map(({ name }) => name), password: DEMO_PASSWORD }]
      : [];
  });
}
