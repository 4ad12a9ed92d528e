import { existsSync } from "node:fs";
import path from "node:path";
import { expect, type Page, test } from "@playwright/test";
import { TIDEWILLOW_PEOPLE } from "../../seed/sign-ins";
import { address, signIn } from "../support/journey";

const KEPT = path.join(import.meta.dirname, "screenshots");
const FOLDER = process.env.UPDATE_SCREENSHOTS ? KEPT : ".tmp/screenshots";

/** The pictures of README.md. `UPDATE_SCREENSHOTS=1 npx playwright test screenshots` renews the committed ones. */
async function picture(page: Page, name: string): Promise<void> {
  await page.evaluate(() => document.fonts.ready);
  await page.screenshot({ path: path.join(FOLDER, `${name}.png`), animations: "disabled" });
  expect(existsSync(path.join(KEPT, `${name}.png`)), `${name}.png is committed`).toBe(true);
}

async function openFirstJob(page: Page): Promise<string> {
  await page.goto(address("/jobs?search=pelican"));
  await page.getByRole("table", { name: "Jobs" }).locator("tbody").getByRole("link").first().click();
  await page.waitForURL(/\/jobs\/[0-9a-f-]{36}$/);
  return new URL(page.url()).pathname;
}

test("pictures of the ledger, a stage record with its findings, and the phone", async ({ page }) => {
  await signIn(page, TIDEWILLOW_PEOPLE.owner.email);
  const job = await openFirstJob(page);
  await picture(page, "ledger");

  await page.goto(address(`${job}/control-setup`));
  await expect(page.getByRole("region", { name: "Findings" })).toBeVisible();
  await picture(page, "stage-record");

  await signIn(page, TIDEWILLOW_PEOPLE.tech.email);
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto(address("/today"));
  await expect(page.getByRole("listitem").first()).toBeVisible();
  await picture(page, "phone");
});
