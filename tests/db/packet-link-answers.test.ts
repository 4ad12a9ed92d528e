import { afterAll, beforeAll, expect, test } from "vitest";
import { GET } from "@/app/api/shared-packets/[secret]/route";
import { printedLinkToken } from "@/lib/auth/link-token";
import { closeDatabase } from "@/lib/db/client";
import { revokeShare, sendPacket } from "@/lib/services/packet-sending";
import { makePacket } from "@/lib/services/packets";
import { type Crew, makeCrew } from "../support/people";
import { LOAD, openJob, save } from "../support/service-jobs";

const A_DAY_MS = 86_400_000;
let crew: Crew;
let links: Readonly<Record<string, string>>;

/** A link as it is mailed: what opens it follows from company and sending. */
async function linkOf(of: Crew, now: Date, withdraw: boolean): Promise<string> {
  const jobId = await openJob(of.office);
  await save(of.office, jobId, "load_summary", LOAD);
  const packetId = await makePacket(of.office, { jobId, kind: "crew", language: "en", paper: "letter" });
  const asked = { jobId, packetId, to: "a@example.com", message: "", days: 7, attach: false } as const;
  const { shareId } = await sendPacket(of.office, asked, now);
  if (withdraw) await revokeShare(of.office, { jobId, shareId });
  return printedLinkToken(of.office.tenantId, `mail ${shareId}`).token;
}

beforeAll(async () => {
  crew = await makeCrew();
  const other = await makeCrew();
  const open = await linkOf(crew, new Date(), false);
  const others = await linkOf(other, new Date(), false);
  links = {
    open,
    "of another company": others.slice(0, 22) + open.slice(22),
    expired: await linkOf(crew, new Date(Date.now() - 8 * A_DAY_MS), false),
    withdrawn: await linkOf(crew, new Date(), true),
    guessed: printedLinkToken(crew.office.tenantId, "nothing that was sent").token,
    "of no company": printedLinkToken(crypto.randomUUID() as never, "nothing that was sent").token,
    "not even a link": "x",
  };
}, 120_000);
afterAll(closeDatabase);

async function answer(token: string) {
  const request = new Request(`http://localhost/api/shared-packets/${token}`, {
    headers: { "x-forwarded-for": crypto.randomUUID() },
  });
  const begun = performance.now();
  const response = await GET(request, { params: Promise.resolve({ secret: token }) });
  const body = Buffer.from(await response.arrayBuffer());
  return {
    ms: performance.now() - begun,
    status: response.status,
    // Names and values in order; a number of the request is its own each time.
    headers: [...response.headers].filter(([name]) => name !== "x-request-id").toSorted(),
    body: body.toString("latin1"),
  };
}

test("another company’s, an expired, a withdrawn and a guessed link get the same answer, byte for byte", async () => {
  const { open, ...bad } = links;
  const right = await answer(open ?? "");
  expect([right.status, right.body.slice(0, 5)]).toEqual([200, "%PDF-"]);
  const answers = await Promise.all(Object.values(bad).map(answer));
  const [first] = answers;
  expect(first?.status).toBe(404);
  expect(first?.body).not.toMatch(/expire|withdraw|revoke|company/i);
  for (const { status, headers, body } of answers)
    expect({ status, headers, body }).toEqual({
      status: first?.status,
      headers: first?.headers,
      body: first?.body,
    });
});

test("nor does the time it takes tell them apart", async () => {
  const { open: _open, "not even a link": _none, ...wellFormed } = links;
  const taken = new Map<string, number[]>(Object.keys(wellFormed).map((name) => [name, []]));
  // By turns, so that a busy moment meets all of them.
  for (let turn = 0; turn < 25; turn += 1)
    for (const [name, token] of Object.entries(wellFormed)) taken.get(name)?.push((await answer(token)).ms);
  const medians = [...taken.values()].map((all) => all.toSorted((a, b) => a - b)[12] ?? 0);
  // A second look-up or a file that is read would double it.
  expect(Math.max(...medians) / Math.min(...medians)).toBeLessThan(1.8);
});
