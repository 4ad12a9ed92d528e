import { DEMO_COMPANIES } from "./companies";
import { seedCompany } from "./seed-company";
import { DEMO_PASSWORD, type DemoPerson } from "./sign-ins";

export type DemoSignIn = DemoPerson & { readonly companies: readonly string[]; readonly password: string };

/**
 * Makes the demo's two companies where they are missing, in the database the settings name, and finishes
 * what an interrupted seed left. Nothing of a complete company is touched.
 *
 * @returns Who can sign in, also when nothing was made.
 */
export async function seedDemo(): Promise<readonly DemoSignIn[]> {
  for (const company of DEMO_COMPANIES) await seedCompany(company);
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
