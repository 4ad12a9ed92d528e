import { readdir, readFile } from "node:fs/promises";
import path from "node:path";
import { expect, type Page, test } from "@playwright/test";
import { TIDEWILLOW_PEOPLE } from "../../seed/sign-ins";
import { address, expectAccessible, signIn, textOfPdf } from "../support/journey";

/** The page at the desk's width and on a phone, without barriers at either. */
async function expectGoodAtBothWidths(page: Page): Promise<void> {
  for (const width of [1280, 390]) {
    await page.setViewportSize({ width, height: 844 });
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
    await expectAccessible(page);
  }
  await page.setViewportSize({ width: 1280, height: 844 });
}

/** The address in the newest mail of the outbox to somebody. */
async function linkMailedTo(to: string): Promise<string> {
  const folder = path.join(process.env.APP_DATA_DIR ?? "", "outbox");
  let link = "";
  // It is sent in the background.
  await expect(async () => {
    for (const name of (await readdir(folder)).toSorted().toReversed()) {
      const mail = (await readFile(path.join(folder, name), "utf8")).replaceAll("=\r\n", "");
      const found = /\/packet\/[A-Za-z0-9_-]{65}/.exec(mail)?.[0];
      if (mail.includes(to) && found !== undefined) link = found;
    }
    expect(link).not.toBe("");
  }).toPass();
  return link;
}

test("a packet is made, sent by a private link, opened signed out, and withdrawn", async ({
  page,
  browser,
}) => {
  const to = "neighbor@example.com";
  await signIn(page, TIDEWILLOW_PEOPLE.office.email);
  await page.goto(address("/jobs?q=Pelican"));
  const job = (await page.getByRole("link", { name: "9", exact: true }).first().getAttribute("href")) ?? "";
  await page.goto(address(`${job}/packet`));
  await page.getByText("Crew sheet", { exact: true }).click();
  await page.getByRole("button", { name: "Make the packet" }).click();
  await expect(page.getByText(/The packet is ready/)).toBeVisible();
  const made = page.getByRole("list", { name: "Packets made" });
  await expect(made.getByRole("heading", { name: "Crew sheet 1" })).toBeVisible();
  const href = await made.getByRole("link", { name: "Open (PDF, 1 page)" }).getAttribute("href");
  const pdf = await page.request.get(address(href ?? ""));
  expect(textOfPdf(await pdf.body())).toContain("Menu 11: cool start gap");

  await made.getByRole("button", { name: "Send…" }).first().click();
  await page.getByLabel("To").fill(to);
  await page.getByRole("button", { name: "Send", exact: true }).click();
  await expect(made.getByText(to)).toBeVisible();
  await expectGoodAtBothWidths(page);

  const link = await linkMailedTo(to);
  const stranger = await browser.newContext();
  const other = await stranger.newPage();
  await other.goto(address(link));
  await expect(other.getByRole("heading", { name: "Crew sheet 1" })).toBeVisible();
  await expectGoodAtBothWidths(other);
  const file = await other.getByRole("link", { name: /Open the packet/ }).getAttribute("href");
  expect(await (await other.request.get(address(file ?? ""))).body()).toEqual(await pdf.body());

  await page.reload();
  await expect(made.getByText(/opened once/)).toBeVisible();
  await made.getByRole("button", { name: `Withdraw the link: ${to}` }).click();
  await expect(made.getByText("withdrawn")).toBeVisible();
  const withdrawn = await other.goto(address(link));
  expect(withdrawn?.status()).toBe(404);
  const guessed = await other.goto(address(`/packet/${"x".repeat(65)}`));
  expect(guessed?.status()).toBe(404);
  expect((await other.request.get(address(file ?? ""))).status()).toBe(404);
  await stranger.close();
});

test("the owner sees the first page of a packet change with the brand being typed", async ({ page }) => {
  await signIn(page, TIDEWILLOW_PEOPLE.owner.email);
  await page.goto(address("/company"));
  const preview = page.getByRole("img", { name: "Preview of a packet" }).locator("canvas");
  await expect(preview.first()).toBeVisible();
  const picture = () => preview.first().evaluate((canvas: HTMLCanvasElement) => canvas.toDataURL());
  const before = await picture();
  await page.getByText("band of your color", { exact: true }).click();
  await page.locator("[name=coverWords]").fill("Dry all summer.");
  await expect(async () => expect(await picture()).not.toBe(before)).toPass();
  await page.getByLabel("Parts warranty, years").fill("two");
  await expect(page.getByText(/Parts warranty: enter whole years/)).toBeVisible();
  await expectGoodAtBothWidths(page);
});
