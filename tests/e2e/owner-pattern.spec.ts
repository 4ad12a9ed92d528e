import { readFile } from "node:fs/promises";
import { expect, test } from "@playwright/test";
import { TIDEWILLOW_PEOPLE } from "../../seed/sign-ins";
import { expectAccessible, signIn } from "../support/journey";

test("the owner finds in two clicks that all humidity callbacks share one airflow setting", async ({
  page,
}) => {
  await signIn(page, TIDEWILLOW_PEOPLE.owner.email);
  await page.getByRole("link", { name: "Across jobs" }).click();
  await expect(
    page.getByText(/All 3 jobs with a humidity complaint have the same second-stage airflow setting: tap 4/),
  ).toBeVisible();
  await expectAccessible(page);
  await page
    .getByRole("region", { name: "What goes with it, by setting" })
    .getByRole("link", { name: "tap 4", exact: true })
    .click();
  const jobs = page.getByRole("region", { name: "Jobs with second-stage airflow setting tap 4" });
  await expect(jobs.getByRole("link", { name: /Quincy Abernot/ })).toBeVisible();
  await expectAccessible(page);
  await page.setViewportSize({ width: 390, height: 844 });
  await expectAccessible(page);
  await jobs.getByRole("link", { name: "1", exact: true }).first().click();
  await expect(page.getByRole("heading", { name: "Log a callback" })).toBeVisible();
  await expectAccessible(page);

  // The phone rings: from any page to a saved complaint by keyboard alone, with half a street to go by.
  await page.setViewportSize({ width: 1280, height: 900 });
  await page.goto(new URL("/rules", page.url()).href);
  await expect(async () => {
    await page.keyboard.press("Alt+c");
    await expect(page.getByLabel("Name, street or job number")).toBeFocused({ timeout: 1_000 });
  }).toPass();
  await page.keyboard.type("spoonb");
  await page.keyboard.press("Enter");
  const found = page.getByRole("list", { name: "Jobs found" });
  await expect(found.getByText(/Spoonbill Court/).first()).toBeVisible();
  await expect(found.getByRole("link").first()).toBeFocused();
  await page.keyboard.press("Enter");
  await expect(page.getByLabel("Complaint", { exact: true })).toBeFocused();
  await page.keyboard.type("Noi");
  await page.keyboard.press("Tab");
  await page.keyboard.type("It rattles at night");
  await page.keyboard.press("Control+Enter");
  await expect(page.getByText("Logged. It stands among the job’s callbacks.")).toBeVisible();
  await expect(page.getByText("It rattles at night")).toBeVisible();
});

test("the owner draws a measure by a setting, keeps the question, and takes the jobs along as CSV", async ({
  page,
}) => {
  await signIn(page, TIDEWILLOW_PEOPLE.owner.email);
  await page.goto(new URL("/across-jobs", page.url()).href);
  await page.getByLabel("By", { exact: true }).selectOption({ label: "Second-stage airflow setting" });
  await page.getByLabel("And draw").selectOption({ label: "Moisture removal" });
  await page.getByRole("button", { name: "Ask" }).click();
  await expect(page.getByText("Moisture removal by second-stage airflow setting").first()).toBeVisible();
  await expectAccessible(page);
  await page.getByText("Keep this question", { exact: true }).click();
  await page.getByLabel("Keep this question as").fill("Water by airflow");
  await page.getByRole("button", { name: "Keep", exact: true }).click();
  const kept = page.getByRole("link", { name: "Water by airflow" });
  await expect(kept).toBeVisible();
  await page.goto(new URL("/across-jobs", page.url()).href);
  await kept.click();
  await expect(page).toHaveURL(/measure=moistureRemovalLbPerH/);
  const download = page.waitForEvent("download");
  await page.getByRole("link", { name: "All these jobs with their facts as CSV" }).click();
  const text = await readFile(await (await download).path(), "utf8");
  expect(text).toContain("Quincy Abernot");
  await page.getByRole("link", { name: "Instruments and sensors" }).click();
  await expect(page.getByRole("region", { name: "Instruments" })).toBeVisible();
  await expectAccessible(page);
  await page.setViewportSize({ width: 390, height: 844 });
  await expectAccessible(page);
});
