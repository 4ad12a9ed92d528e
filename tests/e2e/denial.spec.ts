import { randomUUID } from "node:crypto";
import { readFileSync } from "node:fs";
import path from "node:path";
import { expect, test } from "@playwright/test";
import { may, type Role } from "../../lib/domain/roles";
import type { TenantScope } from "../../lib/domain/scope";
import { DEMO_PASSWORD, HICKORANE_PEOPLE, TIDEWILLOW_PEOPLE } from "../../seed/sign-ins";
import { connect, inRole } from "../support/connect";
import { appFiles } from "../support/doors";
import { signInOverHttp } from "../support/http-client";
import { addressOfPage, PAGE_SAMPLES, type PageIds, permissionAsked } from "../support/page-samples";

const ROOT = path.resolve(import.meta.dirname, "../..");
const OURS = {
  owner: TIDEWILLOW_PEOPLE.owner,
  office: TIDEWILLOW_PEOPLE.office,
  tech: TIDEWILLOW_PEOPLE.tech,
};
const ROLES_OF_OURS = Object.keys(OURS) as readonly Role[];

type Seen = {
  readonly status: number;
  readonly leadsTo: string | null;
  /** Everything the browser is sent: markup and data, line by line, whatever the order they arrived in. */
  readonly lines: readonly string[];
};

/** Fetches a page as the owner of a cookie, following nothing. What was asked for is taken out of the answer. */
async function look(address: string, cookie: string): Promise<Seen> {
  const response = await fetch(`${process.env.APP_ADDRESS}${address}`, {
    headers: { cookie },
    redirect: "manual",
  });
  const html = await response.text();
  const asked = address.split("/").filter((part) => part.length > 30);
  const lines = asked
    .reduce((text, part) => text.replaceAll(part, "ASKED"), html)
    // The data of a page comes in as many pieces as the moment makes.
    .replaceAll('"])</script><script>self.__next_f.push([1,"', "")
    .split(/(?=<)|\\n/)
    .filter((line) => line !== "")
    .toSorted();
  return { status: response.status, leadsTo: response.headers.get("location"), lines };
}

const says = (seen: Seen, words: string) => seen.lines.some((line) => line.includes(words));
const NOT_HERE = "This page is not here";

const cookies: Partial<Record<Role, string>> = {};
let own: PageIds;
let unassigned: PageIds;
let foreign: PageIds;

/** Ids that name nothing. */
const randomIds = (): PageIds => ({
  jobId: randomUUID(),
  modelId: randomUUID(),
  secret: "s".repeat(43),
  packetSecret: "s".repeat(65),
});
const cookieOf = (role: Role): string => cookies[role] ?? "";

/** Ids of a company as the database has them: a job the tech is assigned to, or another, and a model. */
async function idsOfCompany(ownerEmail: string, techEmail: string) {
  const client = await connect();
  try {
    const tenant = await inRole(client, "app_unscoped", null, async () => {
      const { rows } = await client.query("SELECT tenant_id AS id FROM membership WHERE email = $1", [
        ownerEmail,
      ]);
      return { tenantId: rows[0].id } as unknown as TenantScope;
    });
    return await inRole(client, "app_user", tenant, async () => {
      const { rows } = await client.query<{ id: string; assigned: boolean }>(
        `SELECT id, EXISTS (SELECT FROM job_assignment a JOIN membership m ON m.user_id = a.user_id
           WHERE a.job_id = job.id AND m.email = $1) AS assigned FROM job ORDER BY number`,
        [techEmail],
      );
      const models = await client.query<{ id: string }>("SELECT id FROM equipment_model ORDER BY id");
      const of = (assigned: boolean): PageIds => ({
        jobId: rows.find((row) => row.assigned === assigned)?.id ?? "",
        modelId: models.rows[0]?.id ?? "",
        secret: "s".repeat(43),
        packetSecret: "s".repeat(65),
      });
      return { assigned: of(true), unassigned: of(false) };
    });
  } finally {
    await client.end();
  }
}

test.beforeAll(async () => {
  for (const role of ROLES_OF_OURS) {
    cookies[role] = await signInOverHttp(process.env.APP_ADDRESS ?? "", OURS[role].email, DEMO_PASSWORD);
  }
  const ours = await idsOfCompany(OURS.owner.email, OURS.tech.email);
  own = ours.assigned;
  unassigned = { ...ours.unassigned, modelId: randomUUID() };
  foreign = (await idsOfCompany(HICKORANE_PEOPLE.owner.email, HICKORANE_PEOPLE.tech.email)).assigned;
  const all = [own, unassigned, foreign].flatMap((ids) => Object.values(ids));
  expect(all).not.toContain("");
});

test("every page has a sample, with the permission its code asks for", () => {
  const pages = appFiles(/\/page\.tsx$/);
  expect(pages.map(addressOfPage).toSorted()).toEqual(Object.keys(PAGE_SAMPLES).toSorted());
  for (const file of pages) {
    const asked = permissionAsked(readFileSync(path.join(ROOT, file), "utf8"));
    expect(`${file}: ${asked}`).toBe(`${file}: ${PAGE_SAMPLES[addressOfPage(file)]?.permission}`);
  }
});

for (const [page, sample] of Object.entries(PAGE_SAMPLES)) {
  const { permission } = sample;
  if (permission === null) continue;

  test(`${page}: nobody is led to the sign-in, whatever the address names`, async () => {
    for (const address of [own, foreign, randomIds()].flatMap(sample.addresses)) {
      const seen = await look(address, "");
      expect([address, seen.status, seen.leadsTo]).toEqual([address, 307, "/sign-in"]);
    }
  });

  for (const role of ROLES_OF_OURS) {
    const allowed = may(role, permission);
    test(`${page}: ${allowed ? "only the own company's" : "nothing"} as ${role}`, async () => {
      const cookie = cookieOf(role);
      for (const [index, address] of sample.addresses(own).entries()) {
        const seen = await look(address, cookie);
        if (!allowed) {
          expect([address, seen.status, says(seen, NOT_HERE)]).toEqual([address, 404, true]);
          continue;
        }
        if (sample.leadsTo) {
          expect(seen.leadsTo).toMatch(sample.leadsTo);
          continue;
        }
        expect([address, seen.status]).toEqual([address, 200]);
        const addressFor = (ids: PageIds) => sample.addresses(ids)[index] ?? "";
        if (addressFor(foreign) === address) continue;
        const unknown = await look(addressFor(randomIds()), cookie);
        expect([unknown.status, says(unknown, NOT_HERE)]).toEqual([404, true]);
        expect(await look(addressFor(foreign), cookie)).toEqual(unknown);
        if (role === "tech") expect(await look(addressFor(unassigned), cookie)).toEqual(unknown);
      }
    });
  }
}

test("another company's job looks in the browser like a page that does not exist", async ({
  page,
  context,
}) => {
  const url = process.env.APP_ADDRESS ?? "";
  const pairs = cookieOf("owner")
    .split("; ")
    .map((pair) => ({ name: pair.split("=", 1)[0] ?? "", value: pair.slice(pair.indexOf("=") + 1), url }));
  await context.addCookies(pairs);
  const texts: string[] = [];
  for (const address of [`/jobs/${foreign.jobId}`, `/jobs/${randomUUID()}`]) {
    await page.goto(`${url}${address}`);
    await expect(page.getByRole("heading", { name: NOT_HERE })).toBeVisible();
    texts.push(await page.locator("body").ariaSnapshot());
  }
  expect(texts[0]).toBe(texts[1]);
});

test("a guessed invitation is as a page that does not exist", async () => {
  const [one, other] = [await look(`/join/${"a".repeat(43)}`, ""), await look(`/join/${"b".repeat(43)}`, "")];
  expect(one.status).toBe(404);
  expect(other).toEqual(one);
});

test("files of another company are as files that do not exist", async () => {
  const read = async (address: string) => {
    const response = await fetch(`${process.env.APP_ADDRESS}${address}`, {
      headers: { cookie: cookieOf("owner") },
    });
    return [response.status, await response.text()];
  };
  const packet = randomUUID();
  expect(await read(`/api/jobs/${foreign.jobId}/packets/${packet}`)).toEqual(
    await read(`/api/jobs/${randomUUID()}/packets/${packet}`),
  );
  expect((await read(`/api/jobs/${foreign.jobId}/packets/${packet}`))[0]).toBe(404);
});
