import { createHash } from "node:crypto";
import { readdir, readFile, rename, rm, writeFile } from "node:fs/promises";
import path from "node:path";
import type { Client } from "pg";
import { afterAll, beforeAll, beforeEach, expect, test } from "vitest";
import { UNKNOWN_ADDRESS } from "@/lib/auth/client-address";
import { closeDatabase } from "@/lib/db/client";
import { unscopedTransaction } from "@/lib/db/unscoped/transaction";
import { workItems } from "@/lib/db/work-items";
import type { JobId } from "@/lib/domain/ids";
import { env } from "@/lib/env";
import { sha256Of } from "@/lib/files/store";
import { openPacketLink, readLinkedPacket } from "@/lib/services/packet-links";
import { mailPacket, revokeShare, sendPacket } from "@/lib/services/packet-sending";
import { listPackets, makePacket, readPacket } from "@/lib/services/packets";
import { connect } from "../support/connect";
import { type Crew, given, makeCrew } from "../support/people";
import { LOAD, openJob, refusedBy, save } from "../support/service-jobs";

const A_DAY_MS = 86_400_000;
let client: Client;
let crew: Crew;
let job: JobId;
let packetId: string;
let address: string;

const wanted = { kind: "homeowner", language: "en", paper: "letter" } as const;

beforeAll(async () => {
  client = await connect();
  crew = await makeCrew();
  job = await openJob(crew.office);
  await save(crew.office, job, "load_summary", LOAD);
  packetId = await makePacket(crew.office, { jobId: job, ...wanted });
}, 120_000);
beforeEach(() => {
  address = crypto.randomUUID();
});
afterAll(async () => {
  await client.end();
  await closeDatabase();
});

/** Sends the packet and answers the secret of the link in the newest mail of the outbox to that address. */
async function sent(days: 7 | 30 | 90 = 30): Promise<{ readonly secret: string; readonly mail: string }> {
  const to = `${crypto.randomUUID()}@example.com`;
  const asked = { jobId: job, packetId, to, message: "As promised.", days, attach: false };
  await mailPacket(crew.office, await sendPacket(crew.office, asked));
  const folder = path.join(env().DATA_DIR, "outbox");
  for (const name of (await readdir(folder)).toReversed()) {
    const mail = (await readFile(path.join(folder, name), "utf8")).replaceAll("=\r\n", "");
    const secret = /\/packet\/([A-Za-z0-9_-]{65})/.exec(mail)?.[1];
    if (mail.includes(to) && secret !== undefined) return { secret, mail };
  }
  throw new Error("The mail is not in the outbox.");
}

const shares = async () =>
  given((await listPackets(crew.office, job)).find((one) => one.id === packetId)).shares;

test("a sent link opens the very file, and says when it was opened", async () => {
  const { secret, mail } = await sent();
  const page = await openPacketLink(secret, address);
  const own = await readPacket(crew.office, job, packetId);
  expect(page).toMatchObject({ kind: "homeowner", isReplaced: false, sha256: sha256Of(own.bytes) });
  expect(mail).toContain(sha256Of(own.bytes));
  expect((await shares())[0]).toMatchObject({ openCount: 0, firstOpenedAt: null, purpose: "mail" });
  const { bytes } = await readLinkedPacket(secret, address);
  expect(Buffer.from(bytes).equals(Buffer.from(own.bytes))).toBe(true);
  await readLinkedPacket(secret, address);
  const [share] = await shares();
  expect(share).toMatchObject({ openCount: 2, sha256: sha256Of(own.bytes) });
  expect(share?.firstOpenedAt).not.toBeNull();
});

test("guessed, foreign, expired and withdrawn links are the same nothing", async () => {
  const { secret } = await sent(7);
  const refusal = async (token: string, now?: Date) => {
    const { code, message, fields, details } = await refusedBy(
      openPacketLink(token, crypto.randomUUID(), now),
    );
    return { code, message, fields, details };
  };
  const nothing = await refusal("no token at all");
  expect(nothing.code).toBe("NOT_FOUND");
  const otherCompany = (await makeCrew()).owner.tenantId;
  const foreign =
    Buffer.from(otherCompany.replaceAll("-", ""), "hex").toString("base64url") + secret.slice(22);
  expect(await refusal(foreign)).toEqual(nothing);
  expect(await refusal(`${secret.slice(0, 64)}${secret.endsWith("A") ? "E" : "A"}`)).toEqual(nothing);
  expect(await refusal(secret, new Date(Date.now() + 8 * A_DAY_MS))).toEqual(nothing);
  await openPacketLink(secret, address);
  const [share] = await shares();
  await revokeShare(crew.office, { jobId: job, shareId: given(share).id });
  expect(await refusal(secret)).toEqual(nothing);
  expect((await refusedBy(readLinkedPacket(secret, address))).code).toBe("NOT_FOUND");
});

test("an address that guesses too often finds nothing, right links do not use its tries up", async () => {
  const { secret } = await sent();
  for (let turn = 0; turn < 40; turn += 1) await openPacketLink(secret, address);
  for (let turn = 0; turn < 31; turn += 1) await refusedBy(openPacketLink("x".repeat(65), address));
  expect((await refusedBy(openPacketLink(secret, address))).code).toBe("NOT_FOUND");
  expect((await openPacketLink(secret, crypto.randomUUID())).kind).toBe("homeowner");
});

test("where no proxy tells addresses apart, whoever guesses shuts out nobody who holds a link", async () => {
  const { secret } = await sent();
  await unscopedTransaction(async (tx) => {
    const key = `packet:${createHash("sha256").update(UNKNOWN_ADDRESS).digest("hex").slice(0, 32)}`;
    const counted = { points: 5_000, expire: new Date(Date.now() + 60_000) };
    await tx.rateLimit.upsert({ where: { key }, create: { key, ...counted }, update: counted });
  });
  expect((await openPacketLink(secret, UNKNOWN_ADDRESS)).kind).toBe("homeowner");
  expect((await refusedBy(openPacketLink("x".repeat(65), UNKNOWN_ADDRESS))).code).toBe("NOT_FOUND");
});

test("only the hash of a link is kept", async () => {
  const { secret } = await sent();
  const rows = await client.query("SELECT to_jsonb(s)::text AS row FROM packet_share s");
  expect(rows.rows.some(({ row }) => row.includes(secret.slice(22)))).toBe(false);
});

test("a replaced packet says so behind its link", async () => {
  const { secret } = await sent();
  await save(crew.office, job, "load_summary", { ...LOAD, humidityLimitPct: 52 }, 1);
  await makePacket(crew.office, { jobId: job, ...wanted });
  expect((await openPacketLink(secret, address)).isReplaced).toBe(true);
  const [newest, older] = (await listPackets(crew.office, job)).toSorted((a, b) => b.revision - a.revision);
  expect([newest?.replacedBy, older?.replacedBy]).toEqual([null, newest?.revision]);
});

test("a mail that cannot be sent leaves no open link", async () => {
  const bad = {
    jobId: job,
    packetId,
    to: "two@example.com, three@example.com",
    message: "",
    days: 7,
    attach: false,
  };
  const sending = await sendPacket(crew.office, bad as never);
  expect((await refusedBy(mailPacket(crew.office, sending))).code).toBe("INVALID_INPUT");
  const made = given((await shares()).find((share) => share.id === sending.shareId));
  expect(made.revokedAt).not.toBeNull();
  expect(made.sendProblem).toMatch(/one e-mail address/);
});

test("a mail server that is away is seen beside the link, tried again, and the link is the same one", async () => {
  const to = `${crypto.randomUUID()}@example.com`;
  const asked = { jobId: job, packetId, to, message: "", days: 30, attach: true } as const;
  const sending = await sendPacket(crew.office, asked);
  const work = (await workItems(crew.office).list(["waiting"], { take: 50 })).find(({ title }) =>
    title.includes(to),
  );
  expect(work?.title).toMatch(/^Send homeowner packet \d+ of job \d+ to /);
  // A file where the folder of mails should be: nothing can be sent.
  const folder = path.join(env().DATA_DIR, "outbox");
  await rename(folder, `${folder}-away`);
  await writeFile(folder, "");
  await expect(mailPacket(crew.office, sending)).rejects.toThrow();
  await rm(folder);
  await rename(`${folder}-away`, folder);
  const own = async () => given((await shares()).find((share) => share.id === sending.shareId));
  expect(await own()).toMatchObject({
    sentAt: null,
    revokedAt: null,
    sendProblem: "The mail could not be made.",
  });
  expect(await mailPacket(crew.office, sending)).toBe(`Sent to ${to}.`);
  expect(await own()).toMatchObject({ sendProblem: "", sentAt: expect.any(String) });
  expect(await mailPacket(crew.office, sending)).toBe("It has been sent already.");
  expect(await mailsTo(to)).toBe(1);
});

test("what was withdrawn before it went out is not sent", async () => {
  const to = `${crypto.randomUUID()}@example.com`;
  const asked = { jobId: job, packetId, to, message: "", days: 30, attach: false } as const;
  const sending = await sendPacket(crew.office, asked);
  await revokeShare(crew.office, sending);
  expect(await mailPacket(crew.office, sending)).toMatch(/withdrawn before/);
  expect(await mailsTo(to)).toBe(0);
});

async function mailsTo(to: string): Promise<number> {
  const folder = path.join(env().DATA_DIR, "outbox");
  const mails = await Promise.all(
    (await readdir(folder)).map((name) => readFile(path.join(folder, name), "utf8")),
  );
  return mails.filter((mail) => mail.includes(to)).length;
}
