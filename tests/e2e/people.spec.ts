import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { expect, test } from "@playwright/test";
import { DEMO_COMPANIES } from "../../seed/companies";
import { HICKORANE_PEOPLE, TIDEWILLOW_PEOPLE } from "../../seed/sign-ins";
import { address, expectAccessible, signIn } from "../support/journey";

/** The one-time link in the newest mail of the outbox to an address. */
function linkFor(email: string): string {
  const outbox = path.join(process.env.APP_DATA_DIR ?? "", "outbox");
  const mails = readdirSync(outbox)
    .sort()
    .reverse()
    .map((name) => readFileSync(path.join(outbox, name), "utf8"));
  const mail = mails.find((text) => text.includes(email)) ?? "";
  // Long lines of a mail are folded with "=" at their end.
  return /\/join\/[\w-]+/.exec(mail.replaceAll(/=\r?\n/g, ""))?.[0] ?? "no link";
}

test("invite, join, sign in, remove: the removed person's session ends at the next step", async ({
  page,
  browser,
}) => {
  await signIn(page, TIDEWILLOW_PEOPLE.owner.email);
  await page.goto(address("/company/members"));
  await expectAccessible(page);
  const email = "new.tech@tidewillow.example";
  await page.getByLabel("E-mail").fill(email);
  await page.getByLabel("Name", { exact: true }).fill("Octavia Stray-Lindqvist");
  await page.getByLabel("Role").last().selectOption({ label: "Field tech" });
  await page.getByRole("button", { name: /invit/i }).click();
  await expect(page.getByText(email).first()).toBeVisible();

  const guest = await (await browser.newContext()).newPage();
  const link = linkFor(email);
  await guest.goto(address(link));
  await guest.getByLabel("Choose a password").fill("short");
  await guest.getByRole("button", { name: "Join" }).click();
  await expect(guest.getByText(/at least 10 characters/i).first()).toBeVisible();
  await guest.getByLabel("Choose a password").fill("a long enough password");
  await guest.getByRole("button", { name: "Join" }).click();
  await guest.waitForURL(/\/sign-in/);
  await guest.getByLabel("Password").fill("a long enough password");
  await guest.getByRole("button", { name: "Sign in" }).click();
  await guest.waitForURL(/\/today/);

  // The link works once.
  expect((await guest.request.get(address(link))).status()).toBe(404);

  await page.reload();
  await page
    .getByRole("row", { name: /Octavia/ })
    .getByRole("button", { name: /remove/i })
    .click();
  await page
    .getByRole("dialog")
    .getByRole("button", { name: /remove/i })
    .click();
  await expect(page.getByRole("row", { name: /Octavia/ })).toBeHidden();
  // What the phone held is taken off it at its next contact, and it says so.
  await guest.goto(address("/today"));
  await expect(guest.getByText(/You no longer work for/)).toBeVisible();
  await guest.goto(address("/account"));
  await expect(guest).toHaveURL(/\/sign-in/);
  await guest.context().close();
});

test("a program's token works until it is revoked; a webhook shows its secret once", async ({
  page,
  browser,
}) => {
  await signIn(page, TIDEWILLOW_PEOPLE.owner.email);
  await page.goto(address("/company/tokens"));
  await page.getByLabel("Name", { exact: true }).fill("Bookkeeping");
  await page.getByRole("button", { name: "Make the token" }).click();
  const token = await page.getByRole("textbox", { name: "Secret" }).inputValue();
  await expectAccessible(page);
  const program = (await browser.newContext()).request;
  const listJobs = () =>
    program.get(address("/api/v1/jobs?limit=3"), { headers: { authorization: `Bearer ${token}` } });
  expect((await (await listJobs()).json()).jobs).toHaveLength(3);
  await page.reload();
  await expect(page.getByText(token)).toHaveCount(0);
  await expect(page.getByRole("textbox", { name: "Secret" })).toBeHidden();
  await page.getByRole("button", { name: "Revoke Bookkeeping" }).click();
  await expect(page.getByRole("row", { name: /Bookkeeping/ })).toContainText("revoked");
  expect((await listJobs()).status()).toBe(401);

  await page.getByRole("link", { name: "How programs call" }).click();
  await expect(page.getByRole("heading", { name: "The API" })).toBeVisible();
  await expectAccessible(page);

  await page.goto(address("/company/webhooks"));
  await page.getByLabel("Address").fill("https://127.0.0.1/in");
  await page.getByLabel("A packet was sent").check();
  await page.getByRole("button", { name: "Add the webhook" }).click();
  await expect(page.getByText(/inside a network/).first()).toBeVisible();
  await page.getByLabel("Address").fill("https://listener.example/in");
  await page.getByRole("button", { name: "Add the webhook" }).click();
  await expect(page.getByRole("textbox", { name: "Secret" })).toHaveValue(/^dewlsign_/);
  await expectAccessible(page);
  await page.getByRole("button", { name: "Remove listener.example" }).click();
  await expect(page.getByText("No webhooks yet")).toBeVisible();
});

test("one person, two companies: switching shows the other's jobs and only those", async ({ page }) => {
  await signIn(page, HICKORANE_PEOPLE.office.email);
  const [tidewillow, hickorane] = DEMO_COMPANIES;
  const switchTo = async (company: typeof tidewillow) => {
    await page.goto(address("/jobs"));
    await page.getByLabel("Company", { exact: true }).selectOption({ label: company?.name ?? "" });
    await expect(page.getByRole("link", { name: company?.brand.displayName ?? "" }).first()).toBeVisible();
  };
  const jobs = page.getByRole("table", { name: "Jobs" });

  await switchTo(tidewillow);
  await expect(jobs.getByText("Theodora Wexcombe-Pham")).toBeVisible();
  const otherJob = await jobs.getByRole("link", { name: "Theodora Wexcombe-Pham" }).getAttribute("href");

  // A second tab stays with the company it shows when this one goes to the other.
  const tab = await page.context().newPage();
  await tab.goto(address("/jobs"));
  await switchTo(hickorane);
  await expect(jobs.getByRole("row")).not.toHaveCount(0);
  await expect(page.getByText("Theodora Wexcombe-Pham")).toBeHidden();
  expect((await page.request.get(address(otherJob ?? ""))).status()).toBe(404);
  await tab.getByRole("link", { name: "Callbacks" }).first().click();
  await tab.waitForURL(/callbacks/);
  const photos = `/api${otherJob}/photos`;
  expect(await tab.evaluate(async (path) => (await fetch(path)).status, photos)).toBe(200);
  expect(await page.evaluate(async (path) => (await fetch(path)).status, photos)).toBe(404);
  await tab.goBack();
  const csv = await tab.getByRole("link", { name: /as CSV/ }).getAttribute("href");
  const [shown, switched] = await Promise.all(
    [csv, "/api/jobs/export"].map(async (path) => (await page.request.get(address(path ?? ""))).text()),
  );
  expect(shown).toContain("Theodora Wexcombe-Pham");
  expect(switched).not.toContain("Theodora Wexcombe-Pham");
  await tab.close();
});

test("signing out ends the session", async ({ page }) => {
  await signIn(page, TIDEWILLOW_PEOPLE.office.email);
  await page
    .getByRole("button", { name: new RegExp(TIDEWILLOW_PEOPLE.office.name) })
    .first()
    .click();
  await page.getByRole("menuitem", { name: "Sign out" }).click();
  await page.waitForURL(/\/sign-in/);
  await page.goto(address("/jobs"));
  await expect(page).toHaveURL(/\/sign-in/);
});
