import pg, { type Client } from "pg";
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, test, vi } from "vitest";
import { closeDatabase } from "@/lib/db/client";
import { may, ROLES } from "@/lib/domain/roles";
import type { TenantScope } from "@/lib/domain/scope";
import { notFound, STATUS_OF } from "@/lib/errors";
import { rowsOfCompany } from "../support/company-rows";
import { connect } from "../support/connect";
import { ACTION_SAMPLES, type Ids, ROUTE_SAMPLES, randomIds } from "../support/door-samples";
import { type Door, findDoors } from "../support/doors";
import { makeWholeCompany, type WholeCompany } from "../support/whole-company";

const asked = vi.hoisted(() => ({
  scope: null as TenantScope | null,
  companies: [] as readonly { readonly tenantId: string }[],
  address: "",
  cookiesSet: [] as string[],
  own: null as WholeCompany | null,
}));
vi.mock("@/lib/auth/session", () => ({
  COMPANY_COOKIE: "dewledger-company",
  currentScope: async () => asked.scope,
  currentPerson: async () => (asked.scope ? { companies: asked.companies } : null),
}));
vi.mock("next/headers", () => ({
  headers: async () => new Headers({ "x-forwarded-for": asked.address }),
  cookies: async () => ({
    get: () => undefined,
    set: (_: string, value: string) => asked.cookiesSet.push(value),
  }),
}));
vi.mock("next/cache", () => ({ revalidatePath: () => undefined }));

/** Ways in that no wrapper guards, and why. */
const OPEN: Readonly<Record<string, string>> = {
  "app/api/auth/[...nextauth]/route.ts GET": "sign-in itself: nobody is known yet",
  "app/api/auth/[...nextauth]/route.ts POST": "sign-in itself: nobody is known yet",
  "app/api/health/route.ts GET": "for a load balancer; says nothing of any company",
  "app/api/v1/openapi.json/route.ts GET": "how programs call: the same for everybody, without data",
  "app/api/v1/[...rest]/route.ts GET": "says that no call of the API stands there",
  "app/api/v1/[...rest]/route.ts POST": "says that no call of the API stands there",
  "app/sw/[path]/route.ts GET": "the service worker: the same script for everybody, without data",
  "app/company-choice.ts chooseCompany": "sets a wish that every request checks; has a test of its own below",
};

/** Found before the tests are named, so that each way in has its own. */
const doors = await findDoors();
const wrapped = doors.filter((door) => door.facts !== null);
const guarded = wrapped.filter((door) => door.facts?.permission !== null);
/** What a person opens by signing in; the rest is for programs, which have an owner's token or none. */
const forPeople = guarded.filter((door) => !door.facts?.endpoint);
const forPrograms = guarded.filter((door) => door.facts?.endpoint);
const named = (list: readonly Door[]) => list.map((door) => [door.facts?.name ?? door.export, door] as const);

let client: Client;
let ours: WholeCompany;
let theirs: WholeCompany;
/** Every row of both companies as the test before left them. */
let known: Awaited<ReturnType<typeof allRows>>;

const allRows = async () => [
  await rowsOfCompany(client, ours.crew.owner),
  await rowsOfCompany(client, theirs.crew.owner),
];

async function expectNothingChanged(): Promise<void> {
  const before = known;
  known = await allRows();
  expect(known).toEqual(before);
}

beforeAll(async () => {
  client = await connect();
  ours = await makeWholeCompany();
  theirs = await makeWholeCompany();
  known = await allRows();
}, 120_000);
beforeEach(() => {
  asked.scope = null;
  asked.cookiesSet = [];
  asked.address = crypto.randomUUID();
});
afterEach(() => vi.restoreAllMocks());
afterAll(async () => {
  await client.end();
  await closeDatabase();
});

type Answer = { readonly code: string; readonly whole: unknown };

/** Calls a way in as a person and answers everything the caller sees of it. */
async function knock(door: Door, scope: TenantScope | null, ids: Ids): Promise<Answer> {
  asked.scope = scope;
  const name = door.facts?.name ?? "";
  if (door.kind === "action") {
    const whole = (await door.call(ACTION_SAMPLES[name]?.(ids))) as { ok: boolean; code?: string };
    return { code: whole.ok ? "ok" : String(whole.code), whole };
  }
  const { params = {}, query = {}, body, headers: given = {} } = ROUTE_SAMPLES[name]?.(ids) ?? {};
  const company = [ours, theirs, asked.own].find((one) => one?.crew.owner.tenantId === scope?.tenantId);
  const token: Readonly<Record<string, string>> =
    door.facts?.endpoint && company ? { authorization: `Bearer ${company.apiToken}` } : {};
  const request = new Request(`http://localhost/?${new URLSearchParams(query)}`, {
    method: door.export,
    headers: { ...given, ...token },
    ...(body ? { body } : {}),
  });
  const response = (await door.call(request, { params: Promise.resolve(params) })) as Response;
  const headers = Object.fromEntries([...response.headers].filter(([header]) => header !== "x-request-id"));
  const text = await response.text();
  const code = response.ok ? "ok" : String(JSON.parse(text).code);
  return { code, whole: { status: response.status, headers, text } };
}

/** What "nothing here" looks like from a way in, to the letter. */
function nothingHere(door: Door): unknown {
  const { code, message, fields, details } = notFound();
  return door.kind === "action"
    ? { ok: false, code, message, fields, details }
    : {
        status: STATUS_OF.NOT_FOUND,
        headers: { "cache-control": "private, no-store", "content-type": "application/json" },
        text: JSON.stringify({ code, message, fields, details }),
      };
}

function namesAnId(door: Door): boolean {
  const name = door.facts?.name ?? "";
  const touched = new Set<string>();
  const watched = new Proxy(randomIds(), {
    get: (ids, key) => {
      touched.add(String(key));
      return ids[key as keyof Ids];
    },
  });
  (ACTION_SAMPLES[name] ?? ROUTE_SAMPLES[name])?.(watched);
  return touched.size > 0;
}

/** Somebody of a company whose role has the permission. */
function allowed(door: Door, { crew }: WholeCompany): TenantScope {
  const permission = door.facts?.permission ?? null;
  const role = ROLES.find((one) => permission === null || may(one, permission)) ?? "owner";
  return crew[role];
}

/** The statements an attempt sends to the database, without their values. */
async function statementsOf(attempt: () => Promise<unknown>): Promise<readonly string[]> {
  const spy = vi.spyOn(pg.Client.prototype, "query");
  await attempt();
  const sent = spy.mock.calls.map(([first]: readonly unknown[]) =>
    typeof first === "string" ? first : String((first as { text?: string } | undefined)?.text),
  );
  spy.mockRestore();
  return sent;
}

describe("the list of ways in", () => {
  test("each is wrapped, or is open for a written reason", () => {
    const open = doors.filter((door) => door.facts === null).map((door) => `${door.file} ${door.export}`);
    expect(open.toSorted()).toEqual(Object.keys(OPEN).toSorted());
  });

  test("each has a sample, each name is used once, and no sample is left over", () => {
    const names = (kind: Door["kind"]) =>
      wrapped.filter((door) => door.kind === kind).map((door) => door.facts?.name ?? "");
    expect(names("action").toSorted()).toEqual(Object.keys(ACTION_SAMPLES).toSorted());
    expect(names("route").toSorted()).toEqual(Object.keys(ROUTE_SAMPLES).toSorted());
  });

  /** In use until one way in spoils it for the next, which then gets a new one: a company takes a second to make. */
  let own: WholeCompany | null = null;
  test.each(named(wrapped))(
    "%s: the sample is good: the right person gets through with it",
    async (_, door) => {
      const through = async (whole: WholeCompany) => knock(door, allowed(door, whole), whole.ids);
      if (own !== null && (await through(own)).code === "ok") return;
      own = await makeWholeCompany();
      asked.own = own;
      expect(await through(own)).toMatchObject({ code: "ok" });
    },
  );
});

describe("who may not come in", () => {
  test.each(named(guarded))("%s: nobody who is not signed in", async (_, door) => {
    expect((await knock(door, null, ours.ids)).code).toBe("NOT_SIGNED_IN");
  });

  const wrongRoles = forPeople.flatMap((door) =>
    ROLES.filter((role) => door.facts?.permission && !may(role, door.facts.permission)).map(
      (role) => [door.facts?.name ?? "", role, door] as const,
    ),
  );
  test.each(wrongRoles)("%s: not as %s, and the answer is that of nothing there", async (_, role, door) => {
    expect((await knock(door, ours.crew[role], ours.ids)).whole).toEqual(nothingHere(door));
    await expectNothingChanged();
  });
});

describe("another company's ids", () => {
  /** A list to choose from: its answer names the field, the same for every id that is not in it. */
  const FROM_A_LIST: Readonly<Record<string, string>> = {
    "create job": "INVALID_INPUT",
    // A company's name is no id: any but one's own is a field that does not fit.
    "delete company": "INVALID_INPUT",
  };

  test.each(named(wrapped.filter(namesAnId)))(
    "%s: answers as for ids that do not exist, by the same statements, and changes nothing",
    async (name, door) => {
      // The secret of an invitation or of a packet's link is its own proof, whoever holds it.
      const { secret, packetSecret } = randomIds();
      const foreign: Ids = { ...theirs.ids, secret, packetSecret };
      const roles = door.facts?.endpoint ? (["owner"] as const) : ROLES;
      for (const role of roles.filter((one) => !door.facts?.permission || may(one, door.facts.permission))) {
        const scope = ours.crew[role];
        const unknown = await knock(door, scope, randomIds());
        expect(unknown.code).toBe(FROM_A_LIST[name] ?? "NOT_FOUND");
        expect(await knock(door, scope, foreign)).toEqual(unknown);
        const statements = await statementsOf(() => knock(door, scope, foreign));
        expect(statements.length).toBeGreaterThan(1);
        expect(statements).toEqual(await statementsOf(() => knock(door, scope, randomIds())));
      }
      await expectNothingChanged();
    },
  );

  test.each([
    ["create job", "memberId"],
    ["create job", "weatherFileId"],
    ["schedule job", "memberId"],
    ["read packet", "packetId"],
    ["read packet", "jobId"],
    ["read log window", "importId"],
  ] as const)("%s: one foreign %s among own ids is as one that does not exist", async (name, key) => {
    const door = wrapped.find((one) => one.facts?.name === name);
    if (!door) throw new Error(`${name} is gone.`);
    const scope = allowed(door, ours);
    const unknown = await knock(door, scope, { ...ours.ids, [key]: randomIds()[key] });
    expect(["NOT_FOUND", "INVALID_INPUT"]).toContain(unknown.code);
    expect(await knock(door, scope, { ...ours.ids, [key]: theirs.ids[key] })).toEqual(unknown);
    await expectNothingChanged();
  });

  test("a packet of one own job is not found below another", async () => {
    const door = wrapped.find((one) => one.facts?.name === "read packet");
    if (!door) throw new Error("read packet is gone.");
    const mixed = { ...ours.ids, packetId: ours.unassigned.packetId };
    expect((await knock(door, ours.crew.office, mixed)).whole).toEqual(nothingHere(door));
  });
});

describe("a tech and the jobs of others", () => {
  const forTechs = forPeople.filter(
    (door) => namesAnId(door) && door.facts?.permission && may("tech", door.facts.permission),
  );
  test.each(named(forTechs.filter((door) => door.facts?.permission !== "catalog.read")))(
    "%s: a job that is not assigned is as one that does not exist",
    async (_, door) => {
      const answer = await knock(door, ours.crew.tech, { ...ours.ids, ...ours.unassigned });
      expect(answer.whole).toEqual(nothingHere(door));
      expect(await knock(door, ours.crew.tech, randomIds())).toEqual(answer);
      await expectNothingChanged();
    },
  );
});

describe("tokens of programs", () => {
  test("there are doors for them", () => {
    expect(forPrograms.length).toBeGreaterThan(5);
  });

  test.each(named(forPeople.filter((door) => door.kind === "route")))(
    "%s: a token opens no door of people",
    async (_, door) => {
      asked.scope = null;
      const request = new Request("http://localhost/", {
        method: door.export,
        headers: { authorization: `Bearer ${ours.apiToken}` },
      });
      const { params = {} } = ROUTE_SAMPLES[door.facts?.name ?? ""]?.(ours.ids) ?? {};
      const response = (await door.call(request, { params: Promise.resolve(params) })) as Response;
      expect(response.status).toBe(401);
    },
  );

  test.each(named(forPrograms))(
    "%s: no sign-in opens it, and nothing of it is kept anywhere",
    async (_, door) => {
      asked.scope = ours.crew.owner;
      const { params = {}, body } = ROUTE_SAMPLES[door.facts?.name ?? ""]?.(ours.ids) ?? {};
      const request = new Request("http://localhost/", { method: door.export, ...(body ? { body } : {}) });
      const response = (await door.call(request, { params: Promise.resolve(params) })) as Response;
      expect(response.status).toBe(401);
      expect(response.headers.get("cache-control")).toBe("no-store");
    },
  );
});

describe("what is not asked through a wrapper", () => {
  test("a company is chosen only by its members; any other id chooses nothing", async () => {
    const choose = doors.find((door) => door.export === "chooseCompany");
    asked.scope = ours.crew.owner;
    asked.companies = [{ tenantId: ours.crew.owner.tenantId }];
    const chosen = async (tenantId: string) => {
      asked.cookiesSet = [];
      await choose?.call(tenantId);
      return asked.cookiesSet;
    };
    expect(await chosen(ours.crew.owner.tenantId)).toEqual([ours.crew.owner.tenantId]);
    expect(await chosen(theirs.crew.owner.tenantId)).toEqual([]);
    expect(await chosen(randomIds().jobId)).toEqual([]);
    expect(await chosen("no id")).toEqual([]);
    asked.scope = null;
    expect(await chosen(ours.crew.owner.tenantId)).toEqual([]);
  });

  test.each(["http://elsewhere.example", "null", "http://localhost.elsewhere.example"])(
    "a write from a page of %s finds nothing",
    async (origin) => {
      const door = wrapped.find((one) => one.facts?.name === "save logo");
      asked.scope = ours.crew.owner;
      const request = new Request("http://localhost/", {
        method: "POST",
        headers: { origin, host: "localhost" },
        body: "x",
      });
      const response = (await door?.call(request, { params: Promise.resolve({}) })) as Response;
      expect(response.status).toBe(404);
    },
  );
});
