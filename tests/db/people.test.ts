import { randomUUID } from "node:crypto";
import { readdir, readFile } from "node:fs/promises";
import path from "node:path";
import type { Client } from "pg";
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import { makeSecret } from "@/lib/auth/one-time-secret";
import { passwordFits } from "@/lib/auth/password";
import { scopeOfMember } from "@/lib/auth/scope";
import { currentPerson, currentScope } from "@/lib/auth/session";
import { takeSignInTry } from "@/lib/auth/sign-in-limit";
import { activity } from "@/lib/db/activity";
import { closeDatabase } from "@/lib/db/client";
import { members } from "@/lib/db/members";
import { unscopedSignInUser } from "@/lib/db/unscoped/people";
import type { TenantScope } from "@/lib/domain/scope";
import { COMPANY_HEADER, PERSON_HEADER } from "@/lib/domain/shown-for";
import { env } from "@/lib/env";
import {
  acceptInvitation,
  changePassword,
  changeRole,
  inviteMember,
  openInvitation,
  removeMember,
  revokeInvitation,
} from "@/lib/services/people";
import { firstBrokenSeq } from "../support/company-rows";
import { connect } from "../support/connect";
import { addMember, given, makeCrew } from "../support/people";
import { refusedBy } from "../support/service-jobs";

const cookie = vi.hoisted(() => ({ jar: {} as Record<string, string>, sent: {} as Record<string, string> }));
vi.mock("next/headers", () => ({
  headers: async () => new Headers(cookie.sent),
  cookies: async () => ({
    get: (name: string) => (cookie.jar[name] === undefined ? undefined : { value: cookie.jar[name] }),
  }),
}));

const PASSWORD = "a few words in a row";
let client: Client;

beforeAll(async () => {
  client = await connect();
});
afterAll(async () => {
  await client.end();
  await closeDatabase();
});

/** Invites someone and answers the secret of the link in the mail. */
async function invited(owner: TenantScope, email: string): Promise<string> {
  await inviteMember(owner, { email, name: "New Person", role: "tech" });
  const folder = path.join(env().DATA_DIR, "outbox");
  for (const name of (await readdir(folder)).toSorted().toReversed()) {
    const mail = await readFile(path.join(folder, name), "utf8");
    // Quoted-printable wraps long lines with "=".
    const link = /\/join\/([\w-]{20,})/.exec(mail.replaceAll("=\r\n", ""));
    if (mail.includes(`To: ${email}`) && link) return given(link[1]);
  }
  throw new Error(`No mail to ${email}.`);
}

/** Answers who the session cookie of a person is, as the next request would find out. */
async function askWith(userId: string, sessionVersion: number, company?: string) {
  const { encode } = await import("next-auth/jwt");
  const token = await encode({ token: { userId, sessionVersion }, secret: env().NEXTAUTH_SECRET });
  cookie.jar = { "next-auth.session-token": token, ...(company ? { "dewledger-company": company } : {}) };
  return { person: await currentPerson(), scope: await currentScope() };
}

test("an invited person joins by the link in the mail, once, and is who they said", async () => {
  const { owner } = await makeCrew();
  const email = `${randomUUID()}@example.com`;
  const secret = await invited(owner, email);
  expect(await openInvitation(secret)).toMatchObject({ email, role: "tech", personIsKnown: false });
  expect(await refusedBy(acceptInvitation({ secret, password: "short" }))).toMatchObject({
    code: "INVALID_INPUT",
    fields: [{ field: "password" }],
  });
  expect(await unscopedSignInUser(email)).toBeNull();
  expect(await acceptInvitation({ secret, password: PASSWORD })).toEqual({ email });
  const user = given(await unscopedSignInUser(email));
  expect(await passwordFits(user.passwordHash, PASSWORD)).toBe(true);
  expect(user.passwordHash).toMatch(/^\$argon2id\$/);
  expect(await scopeOfMember(user.id, owner.tenantId)).toMatchObject({ role: "tech" });
  expect((await members(owner).list()).some((one) => one.email === email)).toBe(true);
  const [newest] = await activity(owner).list({ take: 1 });
  expect(newest).toMatchObject({ action: "member joined", actorName: "New Person", entityId: user.id });
});

test("two uses of one link at the same moment make one member", async () => {
  const { owner } = await makeCrew();
  const email = `${randomUUID()}@example.com`;
  const secret = await invited(owner, email);
  const both = await Promise.allSettled([
    acceptInvitation({ secret, password: PASSWORD }),
    acceptInvitation({ secret, password: PASSWORD }),
  ]);
  expect(both.map((one) => one.status).toSorted()).toEqual(["fulfilled", "rejected"]);
  expect((await members(owner).list()).filter((one) => one.email === email)).toHaveLength(1);
});

test("a second invitation still in the mailbox neither changes a member's role nor lets them in again", async () => {
  const { owner } = await makeCrew();
  const email = `${randomUUID()}@example.com`;
  // What two owners inviting in the same moment leave: neither replaced the other's.
  const secrets = [makeSecret(), makeSecret(), makeSecret()] as const;
  for (const { hash } of secrets) {
    await client.query("BEGIN");
    await client.query("SELECT set_config('role', 'app_user', true), set_config('app.tenant', $1, true)", [
      owner.tenantId,
    ]);
    await client.query(
      `INSERT INTO invitation (tenant_id, id, email, name, role, token_hash, expires_at, created_by)
       VALUES ($1, $2, $3, 'New Person', 'owner', $4, now() + interval '1 day', $5)`,
      [owner.tenantId, randomUUID(), email, hash, owner.userId],
    );
    await client.query("COMMIT");
  }
  const [first, second, third] = secrets.map((one) => ({ secret: one.secret, password: PASSWORD }));
  await acceptInvitation(given(first));
  const { id } = given(await unscopedSignInUser(email));
  await changeRole(owner, { userId: id, role: "tech" });
  expect((await refusedBy(acceptInvitation(given(second)))).code).toBe("NOT_FOUND");
  expect(await scopeOfMember(id, owner.tenantId)).toMatchObject({ role: "tech" });
  await removeMember(owner, { userId: id });
  for (const link of [second, third])
    expect((await refusedBy(acceptInvitation(given(link)))).code).toBe("NOT_FOUND");
  expect(await scopeOfMember(id, owner.tenantId)).toBeNull();
});

test("who joins two companies at once by new links has one password, and is told so", async () => {
  const [first, second] = [await makeCrew(), await makeCrew()];
  const email = `${randomUUID()}@example.com`;
  const links = [await invited(first.owner, email), await invited(second.owner, email)];
  const both = await Promise.allSettled(
    links.map((secret, index) => acceptInvitation({ secret, password: `${PASSWORD} ${index}` })),
  );
  expect(both.map((one) => one.status).toSorted()).toEqual(["fulfilled", "rejected"]);
  const late = both.findIndex((one) => one.status === "rejected");
  expect(both[late]).toMatchObject({ reason: { code: "CONFLICT" } });
  // The link is not used up.
  await acceptInvitation({ secret: links[late] ?? "", password: `${PASSWORD} ${1 - late}` });
});

test("a used, expired, withdrawn, replaced or guessed link is the same nothing", async () => {
  const { owner } = await makeCrew();
  const email = () => `${randomUUID()}@example.com`;
  const used = await invited(owner, email());
  await acceptInvitation({ secret: used, password: PASSWORD });
  const withdrawn = await invited(owner, email());
  await revokeInvitation(owner, given((await members(owner).openInvitations(new Date()))[0]).id);
  const twice = email();
  const replaced = await invited(owner, twice);
  await invited(owner, twice);
  const expired = await invited(owner, email());
  const inEightDays = new Date(Date.now() + 8 * 86_400_000);
  const guessed = await refusedBy(openInvitation(makeSecret().secret));
  expect(guessed.code).toBe("NOT_FOUND");
  for (const [secret, now] of [
    [used, new Date()],
    [withdrawn, new Date()],
    [replaced, new Date()],
    [expired, inEightDays],
  ] as const) {
    for (const attempt of [
      () => openInvitation(secret, now),
      () => acceptInvitation({ secret, password: PASSWORD }, now),
    ]) {
      const { code, message, fields, details } = await refusedBy(attempt());
      expect({ code, message, fields, details }).toEqual({
        code: guessed.code,
        message: guessed.message,
        fields: guessed.fields,
        details: guessed.details,
      });
    }
  }
});

test("a person known from another company joins with the password they have, and with no other", async () => {
  const [first, second] = [await makeCrew(), await makeCrew()];
  const email = `${randomUUID()}@example.com`;
  await acceptInvitation({ secret: await invited(first.owner, email), password: PASSWORD });
  const secret = await invited(second.owner, email);
  expect(await refusedBy(acceptInvitation({ secret, password: "another password" }))).toMatchObject({
    code: "INVALID_INPUT",
    fields: [{ field: "password" }],
  });
  await acceptInvitation({ secret, password: PASSWORD });
  const { id, sessionVersion } = given(await unscopedSignInUser(email));
  const chosen = await askWith(id, sessionVersion, second.owner.tenantId);
  expect(chosen.person?.companies).toHaveLength(2);
  expect(chosen.scope?.tenantId).toBe(second.owner.tenantId);
  const foreign = await askWith(id, sessionVersion, (await makeCrew()).owner.tenantId);
  expect([first.owner.tenantId, second.owner.tenantId]).toContain(foreign.scope?.tenantId);
});

test("what a tab sends goes to the company it shows, whatever another tab has chosen, and from nobody else", async () => {
  const [first, second] = [await makeCrew(), await makeCrew()];
  const email = `${randomUUID()}@example.com`;
  await acceptInvitation({ secret: await invited(first.owner, email), password: PASSWORD });
  await acceptInvitation({ secret: await invited(second.owner, email), password: PASSWORD });
  const { id, sessionVersion } = given(await unscopedSignInUser(email));
  const chosen = second.owner.tenantId;
  const sentBy = async (tenantId: string, userId = id) => {
    cookie.sent = { [COMPANY_HEADER]: tenantId, [PERSON_HEADER]: userId };
    return (await askWith(id, sessionVersion, chosen)).scope?.tenantId;
  };
  try {
    expect(await sentBy(first.owner.tenantId)).toBe(first.owner.tenantId);
    expect(await sentBy(chosen)).toBe(chosen);
    // Somebody else signed in on this computer while the page stood open.
    const others = await refusedBy(sentBy(chosen, first.owner.userId));
    expect(others.code).toBe("OTHER_PERSON");
    const foreign = (await makeCrew()).owner.tenantId;
    for (const wrong of [foreign, randomUUID(), "", "no id"])
      expect((await refusedBy(sentBy(wrong))).code).toBe("NOT_FOUND");
    await removeMember(first.owner, { userId: id });
    expect((await refusedBy(sentBy(first.owner.tenantId))).code).toBe("REMOVED");
  } finally {
    cookie.sent = {};
  }
});

test("a new role counts at the next request; a removal ends the session and the assignments", async () => {
  const { owner, tech } = await makeCrew();
  expect((await askWith(tech.userId, 1)).scope).toMatchObject({ role: "tech" });
  await changeRole(owner, { userId: tech.userId, role: "office" });
  const after = given((await askWith(tech.userId, 1)).scope);
  expect(after.role).toBe("office");
  expect(after.membershipVersion).toBeGreaterThan(tech.membershipVersion);
  await removeMember(owner, { userId: tech.userId });
  expect(await scopeOfMember(tech.userId, owner.tenantId)).toBeNull();
  const removed = await askWith(tech.userId, 1);
  expect([removed.scope, removed.person?.companies]).toEqual([null, []]);
  expect((await refusedBy(removeMember(owner, { userId: tech.userId }))).code).toBe("NOT_FOUND");
  const told = (await activity(owner).list({ take: 10 })).map((line) => line.action);
  expect(told).toEqual(["member removed", "role changed"]);
  expect(await firstBrokenSeq(client, owner)).toBeNull();
});

test("a changed password ends every session; a forged, foreign or damaged cookie is none", async () => {
  const { owner } = await makeCrew();
  const email = `${randomUUID()}@example.com`;
  await acceptInvitation({ secret: await invited(owner, email), password: PASSWORD });
  const { id, sessionVersion } = given(await unscopedSignInUser(email));
  const scope = given((await askWith(id, sessionVersion)).scope);
  const wrong = await refusedBy(
    changePassword(scope, { current: "not it at all", next: "some other words" }),
  );
  expect(wrong).toMatchObject({ code: "INVALID_INPUT", fields: [{ field: "current" }] });
  const short = await refusedBy(changePassword(scope, { current: PASSWORD, next: "short" }));
  expect(short).toMatchObject({ code: "INVALID_INPUT", fields: [{ field: "next" }] });
  expect((await askWith(id, sessionVersion)).scope).not.toBeNull();
  await changePassword(scope, { current: PASSWORD, next: "some other words" });
  expect(await askWith(id, sessionVersion)).toEqual({ person: null, scope: null });
  expect((await askWith(id, sessionVersion + 1)).scope).not.toBeNull();
  const told = await activity(owner).list({ take: 20 });
  expect(told[0]).toMatchObject({ action: "password changed", entityId: id, before: null, after: null });
  expect(told.filter((line) => line.action === "password changed")).toHaveLength(1);

  const { encode } = await import("next-auth/jwt");
  const otherSecret = await encode({ token: { userId: id, sessionVersion: 2 }, secret: "x".repeat(40) });
  for (const token of [otherSecret, "damaged", ""]) {
    cookie.jar = { "next-auth.session-token": token };
    expect(await currentPerson()).toBeNull();
  }
});

test("guesses at the own password end like guesses at the door, and end those too", async () => {
  const { owner } = await makeCrew();
  const email = `${randomUUID()}@example.com`;
  await acceptInvitation({ secret: await invited(owner, email), password: PASSWORD });
  const { id, sessionVersion } = given(await unscopedSignInUser(email));
  const scope = given((await askWith(id, sessionVersion)).scope);
  const guess = (current: string) => refusedBy(changePassword(scope, { current, next: "some other words" }));
  for (let time = 0; time < 8; time++)
    expect(await guess(`guess ${time} at it`)).toMatchObject({ code: "INVALID_INPUT" });
  expect(await guess(PASSWORD)).toMatchObject({ code: "TOO_MANY_TRIES" });
  expect(await takeSignInTry(email, "another address")).toBe(false);
});

test("the last owner stays; of two owners demoting or removing each other at once one stays", async () => {
  const { owner } = await makeCrew();
  // Begun one after the other: a refusal that nobody awaits yet would count as unhandled.
  for (const attempt of [
    () => changeRole(owner, { userId: owner.userId, role: "office" }),
    () => removeMember(owner, { userId: owner.userId }),
  ]) {
    expect(await refusedBy(attempt())).toMatchObject({ code: "INVALID_INPUT", fields: [{ field: "role" }] });
  }
  for (let round = 0; round < 5; round++) {
    const crew = await makeCrew();
    const second = await addMember(crew.owner.tenantId, "owner");
    const both = await Promise.allSettled([
      changeRole(crew.owner, { userId: second.userId, role: "tech" }),
      round % 2 === 0
        ? changeRole(second, { userId: crew.owner.userId, role: "tech" })
        : removeMember(second, { userId: crew.owner.userId }),
    ]);
    expect(both.filter((one) => one.status === "fulfilled")).toHaveLength(1);
    expect((await members(crew.office).list()).filter((one) => one.role === "owner")).toHaveLength(1);
  }
});

test("someone who is a member already is not invited again", async () => {
  const { owner, tech } = await makeCrew();
  const { email } = given((await members(owner).list()).find((one) => one.userId === tech.userId));
  const again = inviteMember(owner, { email, name: "Again", role: "owner" });
  expect(await refusedBy(again)).toMatchObject({ code: "INVALID_INPUT", fields: [{ field: "email" }] });
});
