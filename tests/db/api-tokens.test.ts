import type { Client } from "pg";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { apiCaller } from "@/lib/auth/api-token";
import { activity } from "@/lib/db/activity";
import { apiTokens } from "@/lib/db/api-tokens";
import { closeDatabase } from "@/lib/db/client";
import { API_CALLS_A_MINUTE, MOST_API_TOKENS } from "@/lib/domain/api-tokens";
import type { TenantScope } from "@/lib/domain/scope";
import { addApiToken, apiTokensView, revokeApiToken } from "@/lib/services/api-tokens";
import { changeRole, removeMember } from "@/lib/services/people";
import { callApi } from "../support/call-api";
import { connect, inRole } from "../support/connect";
import { addMember, type Crew, given, makeCrew } from "../support/people";

const A_DAY_MS = 86_400_000;
let client: Client;
let crew: Crew;

beforeAll(async () => {
  client = await connect();
  crew = await makeCrew();
});
afterAll(async () => {
  await client.end();
  await closeDatabase();
});

const madeBy = async (owner: TenantScope, access: "read" | "write" = "read", now = new Date()) =>
  (await addApiToken(owner, { name: "A program", access, days: "30" }, now)).token;
const newest = async (owner: TenantScope) => given((await apiTokens(owner).list())[0]);
const asHeaders = (token: string) => new Headers({ authorization: `Bearer ${token}` });

test("the secret is kept nowhere: not in the row, not on the trail", async () => {
  const token = await madeBy(crew.owner);
  const secret = token.slice("dewl_".length + 22);
  const kept = await inRole(client, "app_user", crew.owner, async () => {
    const tables = await client.query(
      "SELECT to_jsonb(t)::text AS row FROM api_token t UNION ALL SELECT to_jsonb(a)::text FROM activity a",
    );
    return tables.rows.map(({ row }) => row).join("\n");
  });
  expect(kept).toContain(secret.slice(-4));
  expect(kept).not.toContain(secret.slice(0, 8));
  expect(kept).not.toContain(secret);
  const [entry] = await activity(crew.owner).list({ take: 1 });
  expect(entry).toMatchObject({ action: "API token made", after: { name: "A program", access: "read" } });
});

test("a token asks as an office manager of its company, in its maker's name, and says so", async () => {
  const caller = given(await apiCaller(asHeaders(await madeBy(crew.owner, "write"))));
  expect(caller.access).toBe("write");
  expect(caller.scope).toEqual({
    tenantId: crew.owner.tenantId,
    userId: crew.owner.userId,
    role: "office",
    membershipVersion: crew.owner.membershipVersion,
    tokenName: "A program",
  });
});

describe("a token that does not work gets one answer", () => {
  let wrong: string;
  const answerTo = async (token: string) => {
    const { status, text } = await callApi("listJobs", token);
    return `${status} ${text}`;
  };

  beforeAll(async () => {
    wrong = await answerTo("dewl_wrong");
    expect(wrong).toMatch(/^401 .*NOT_SIGNED_IN/);
  });

  test("a good one gets through, so that the answers below mean something", async () => {
    expect(await answerTo(await madeBy(crew.owner))).toMatch(/^200 /);
  });

  test("one character changed, another company's part before it, no prefix, nothing", async () => {
    const token = await madeBy(crew.owner);
    const other = await madeBy((await makeCrew()).owner);
    const changed = token.slice(0, -1) + (token.endsWith("A") ? "B" : "A");
    const mixed = other.slice(0, 27) + token.slice(27);
    for (const one of [changed, mixed, token.slice(5), "", `${token} ${token}`, "x".repeat(10_000)])
      expect(await answerTo(one)).toBe(wrong);
  });

  test("revoked, at the next request", async () => {
    const token = await madeBy(crew.owner);
    expect(await answerTo(token)).not.toBe(wrong);
    const { id } = await newest(crew.owner);
    await revokeApiToken(crew.owner, { tokenId: id });
    expect(await answerTo(token)).toBe(wrong);
    const [entry] = await activity(crew.owner).list({ take: 1 });
    expect(entry).toMatchObject({ action: "API token revoked", entityId: id });
  });

  test("expired, and one without an end counts as ended", async () => {
    const token = await madeBy(crew.owner, "read", new Date(Date.now() - 31 * A_DAY_MS));
    expect(await answerTo(token)).toBe(wrong);
    const endless = await madeBy(crew.owner);
    const { id } = await newest(crew.owner);
    await inRole(client, "app_user", crew.owner, () =>
      client.query("UPDATE api_token SET expires_at = NULL WHERE id = $1", [id]),
    );
    expect(await answerTo(endless)).toBe(wrong);
  });

  test("its maker was removed, or is no owner any more", async () => {
    const leaving = await addMember(crew.owner.tenantId, "owner");
    const lowered = await addMember(crew.owner.tenantId, "owner");
    const tokens = [await madeBy(leaving), await madeBy(lowered)] as const;
    for (const token of tokens) expect(await answerTo(token)).not.toBe(wrong);
    await removeMember(crew.owner, { userId: leaving.userId });
    await changeRole(crew.owner, { userId: lowered.userId, role: "office" });
    for (const token of tokens) expect(await answerTo(token)).toBe(wrong);
    const { tokens: shown } = await apiTokensView(crew.owner);
    expect(shown.filter(({ state }) => state === "revoked").length).toBeGreaterThanOrEqual(2);
    // Asked back, they ask with a token of their own making.
    await inRole(client, "app_user", crew.owner, () =>
      client.query("UPDATE membership SET removed_at = NULL, role = 'owner' WHERE user_id = ANY($1)", [
        [leaving.userId, lowered.userId],
      ]),
    );
    for (const token of tokens) expect(await answerTo(token)).toBe(wrong);
  });

  test("its maker is no owner, however that came about", async () => {
    const maker = await addMember(crew.owner.tenantId, "owner");
    const token = await madeBy(maker);
    expect(await answerTo(token)).not.toBe(wrong);
    await inRole(client, "app_user", crew.owner, () =>
      client.query("UPDATE membership SET role = 'office' WHERE user_id = $1", [maker.userId]),
    );
    expect(await answerTo(token)).toBe(wrong);
  });

  test("its company was closed", async () => {
    const { owner } = await makeCrew();
    const token = await madeBy(owner);
    expect(await answerTo(token)).not.toBe(wrong);
    await inRole(client, "app_user", owner, () =>
      client.query("UPDATE tenant SET closed_at = now() WHERE id = $1", [owner.tenantId]),
    );
    expect(await answerTo(token)).toBe(wrong);
  });
});

test("a reading token is told that it may not write, and nothing is written", async () => {
  const answer = await callApi("addCallback", await madeBy(crew.owner), { body: "{}" });
  expect(answer.status).toBe(403);
  expect(answer.json.code).toBe("READ_ONLY_TOKEN");
});

test("the list says when a token was last used, to the minute", async () => {
  const { owner } = await makeCrew();
  const token = await madeBy(owner);
  const used = async () => (await newest(owner)).lastUsedAt;
  expect(await used()).toBeNull();
  const first = new Date();
  await apiCaller(asHeaders(token), first);
  expect(await used()).toBe(first.toISOString());
  await apiCaller(asHeaders(token), new Date(first.getTime() + 59_000));
  expect(await used()).toBe(first.toISOString());
  const later = new Date(first.getTime() + 61_000);
  await apiCaller(asHeaders(token), later);
  expect(await used()).toBe(later.toISOString());
});

test("calls beyond the limit of a minute are told to wait; another token is not", async () => {
  const { owner } = await makeCrew();
  const [token, other] = [await madeBy(owner), await madeBy(owner)];
  const id = given((await apiCaller(asHeaders(token)))?.tokenId);
  await client.query("SET ROLE app_unscoped");
  await client.query(
    "INSERT INTO rate_limit (key, points, expire) VALUES ($1, $2, now() + interval '1 minute')",
    [`api:${id}`, API_CALLS_A_MINUTE - 1],
  );
  await client.query("RESET ROLE");
  expect((await callApi("listJobs", token)).status).toBe(200);
  const refused = await callApi("listJobs", token);
  expect([refused.status, refused.json.code, refused.headers.get("retry-after")]).toEqual([
    429,
    "TOO_MANY_CALLS",
    "60",
  ]);
  expect((await callApi("listJobs", other)).status).toBe(200);
});

test("a company has at most so many tokens that work; a revoked one makes room", async () => {
  const { owner } = await makeCrew();
  for (let made = 0; made < MOST_API_TOKENS; made++) await madeBy(owner);
  await expect(madeBy(owner)).rejects.toMatchObject({ code: "INVALID_INPUT" });
  await revokeApiToken(owner, { tokenId: (await newest(owner)).id });
  await expect(madeBy(owner)).resolves.toMatch(/^dewl_/);
});
