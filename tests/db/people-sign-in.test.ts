import { randomUUID } from "node:crypto";
import { NextRequest } from "next/server";
import { afterAll, beforeAll, expect, test, vi } from "vitest";
import * as signInRoute from "@/app/api/auth/[...nextauth]/route";
import { deviceCookie } from "@/lib/auth/known-device";
import { authOptions } from "@/lib/auth/options";
import { hashPassword } from "@/lib/auth/password";
import * as limits from "@/lib/auth/sign-in-limit";
import { takeSignInTry } from "@/lib/auth/sign-in-limit";
import { closeDatabase } from "@/lib/db/client";
import { unscopedFoundCompany } from "@/lib/db/unscoped/people";
import { unscopedRateLimit } from "@/lib/db/unscoped/rate-limit";
import { unscopedTransaction } from "@/lib/db/unscoped/transaction";
import { foundCompany } from "@/lib/services/found-company";
import { refusedBy } from "../support/service-jobs";

const PASSWORD = "a few words in a row";
let passwordHash: string;

beforeAll(async () => {
  passwordHash = await hashPassword(PASSWORD);
});
afterAll(closeDatabase);

test("a company is founded with its first owner, who signs in with the password that is printed once", async () => {
  const email = `${randomUUID()}@example.com`;
  const asked = { companyName: "Levee Road", timeZone: "Pacific/Honolulu", email, name: "Own Er" };
  const password = await foundCompany(asked);
  expect(password).toMatch(/^[a-z2-9]{4}(-[a-z2-9]{4}){3}$/);
  expect(await signIn(email, password ?? "")).toBe("in");
  // Whoever signs in here already keeps their password.
  expect(await foundCompany({ ...asked, companyName: "Second" })).toBeNull();
  expect(await signIn(email, password ?? "")).toBe("in");
  const wrong = { companyName: " ", timeZone: "Hawaii time", email: "nobody", name: "" };
  expect((await refusedBy(foundCompany(wrong))).fields.map(({ field }) => field)).toEqual([
    "companyName",
    "timeZone",
    "email",
    "name",
  ]);
});

async function newPerson(): Promise<string> {
  const email = `${randomUUID()}@example.com`;
  const owner = { email, name: "Own Er", passwordHash };
  await unscopedFoundCompany({ companyName: "Signing In", timeZone: "UTC", owner });
  return email;
}

type Credentials = {
  readonly options: {
    readonly authorize: (given: object, request: object) => Promise<object | null>;
  };
};

/** Signs in as the sign-in page does, from an address: "in", "refused" or "blocked". */
async function signIn(
  email: string,
  password: string,
  address = randomUUID(),
  cookie?: string,
): Promise<string> {
  const [provider] = authOptions().providers as unknown as readonly Credentials[];
  try {
    const headers = { "x-forwarded-for": address, cookie };
    const user = await provider?.options.authorize({ email, password }, { headers });
    return user ? "in" : "refused";
  } catch (error) {
    return error instanceof Error && error.message === "TOO_MANY_TRIES" ? "blocked" : String(error);
  }
}

/** Lets every running window end, as the clock would. */
async function windowsPass(): Promise<void> {
  await unscopedTransaction(async (tx) => {
    await tx.rateLimit.updateMany({ data: { expire: new Date(Date.now() - 1_000) } });
  });
}

test("the right password signs in, however the address is spelled, and a wrong one does not", async () => {
  const email = await newPerson();
  expect(await signIn(` ${email.toUpperCase()} `, PASSWORD)).toBe("in");
  expect(await signIn(email, "a wrong password")).toBe("refused");
});

test("after 8 failures the right password is refused too, until the window has passed", async () => {
  const email = await newPerson();
  for (let tries = 0; tries < 8; tries++) expect(await signIn(email, "a wrong password")).toBe("refused");
  expect(await signIn(email, PASSWORD)).toBe("blocked");
  expect(await signIn(email.toUpperCase(), PASSWORD)).toBe("blocked");
  await windowsPass();
  expect(await signIn(email, PASSWORD)).toBe("in");
});

test("whoever guesses elsewhere keeps nobody out of a browser they have signed in with, and gains nothing by it", async () => {
  const [email, other, place] = [await newPerson(), await newPerson(), randomUUID()];
  const [device = ""] = deviceCookie(email).split(";");
  const guess = (cookie?: string) => signIn(email, "a wrong password", place, cookie);
  for (let tries = 0; tries < 9; tries++) await guess();
  expect(await signIn(email, PASSWORD, place)).toBe("blocked");
  expect(await signIn(email, PASSWORD, place, `a=b; ${device}`)).toBe("in");
  // Another person's, a changed and a made-up one are none; signing in by one's own frees nobody else's counter.
  const [others = ""] = deviceCookie(other).split(";");
  const value = others.slice(others.indexOf("=") + 1);
  const name = device.slice(0, device.indexOf("="));
  const changed = device.endsWith("A") ? `${device.slice(0, -1)}B` : `${device.slice(0, -1)}A`;
  for (const cookie of [others, `${name}=${value}`, changed, `${name}=`, name])
    expect(await signIn(email, PASSWORD, place, cookie)).toBe("blocked");
  // Whoever finds the browser guesses eight times, as anybody does.
  for (let tries = 0; tries < 8; tries++) expect(await guess(device)).toBe("refused");
  expect(await signIn(email, PASSWORD, place, device)).toBe("blocked");
});

test("tries sent at the same moment count each other", async () => {
  const email = await newPerson();
  const all = await Promise.all(Array.from({ length: 20 }, () => signIn(email, "a wrong password")));
  expect(all.filter((one) => one === "refused")).toHaveLength(8);
  expect(all.filter((one) => one === "blocked")).toHaveLength(12);
});

test("a right password in between begins the count anew", async () => {
  const email = await newPerson();
  for (let round = 0; round < 2; round++) {
    for (let tries = 0; tries < 7; tries++) await signIn(email, "a wrong password");
    expect(await signIn(email, PASSWORD)).toBe("in");
  }
});

test("an address that has tried too often makes no more counters, and old ones go", async () => {
  const place = randomUUID();
  const count = () => unscopedTransaction((tx) => tx.rateLimit.count());
  for (let tries = 0; tries < 60; tries++) await takeSignInTry(`${randomUUID()}@example.com`, place);
  const before = await count();
  for (let tries = 0; tries < 5; tries++)
    expect(await signIn(`${randomUUID()}@example.com`, PASSWORD, place)).toBe("blocked");
  expect(await count()).toBe(before);
  await windowsPass();
  await unscopedRateLimit.sweep();
  expect(await count()).toBe(0);
});

test("what no address or password can be is refused like a wrong one", async () => {
  const email = await newPerson();
  const odd = ["\0", "a\0b@example.com", "", {}, ["a"], 7, null, "x".repeat(10_000)] as readonly string[];
  for (const one of odd) {
    await windowsPass();
    expect(await signIn(one, PASSWORD)).toBe("refused");
    expect(await signIn(email, one)).toBe("refused");
  }
});

test("a fault of ours tells nothing of how this is built, and is not called a wrong password", async () => {
  const seen: unknown[] = [];
  const { providers } = authOptions({ failed: (error) => seen.push(error) });
  const [provider] = providers as unknown as readonly Credentials[];
  const fault = vi
    .spyOn(limits, "takeSignInTry")
    .mockRejectedValue(new Error("Invalid `tx.$queryRaw()` in /srv/app/db.ts"));
  await expect(provider?.options.authorize({ email: "a@example.com", password: "b" }, {})).rejects.toThrow(
    /^UNAVAILABLE$/,
  );
  expect(seen).toHaveLength(1);
  fault.mockRestore();
});

test("a body larger than any sign-in is refused before it is read", async () => {
  let sent = 0;
  const body = new ReadableStream<Uint8Array>({
    pull: (controller) => {
      sent += 1;
      if (sent > 200) controller.close();
      else controller.enqueue(new Uint8Array(64 * 1024));
    },
  });
  const headers = { "content-type": "application/x-www-form-urlencoded" };
  const request = new NextRequest("http://localhost/api/auth/callback/credentials", {
    method: "POST",
    headers,
    body,
    duplex: "half",
  });
  const answer = await signInRoute.POST(request, { params: Promise.resolve({ nextauth: ["callback"] }) });
  expect([answer.status, (await answer.json()).code]).toEqual([413, "TOO_LARGE"]);
  expect(sent).toBeLessThan(5);
});

test("an address nobody has behaves the same", async () => {
  const unknown = `${randomUUID()}@example.com`;
  for (let tries = 0; tries < 8; tries++) expect(await signIn(unknown, PASSWORD)).toBe("refused");
  expect(await signIn(unknown, PASSWORD)).toBe("blocked");
});

test("one place trying many people is stopped after 60 failures; people who sign in there do not count", async () => {
  const [email, place] = [await newPerson(), randomUUID()];
  for (let times = 0; times < 5; times++) expect(await signIn(email, PASSWORD, place)).toBe("in");
  const failures = await Promise.all(
    Array.from({ length: 60 }, () => signIn(`${randomUUID()}@example.com`, PASSWORD, place)),
  );
  expect(new Set(failures)).toEqual(new Set(["refused"]));
  expect(await signIn(email, PASSWORD, place)).toBe("blocked");
  expect(await signIn(email, PASSWORD)).toBe("in");
});
