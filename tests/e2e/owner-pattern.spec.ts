import { expect, test } from "@playwright/test";
import { TIDEWILLOW_PEOPLE } from "../../seed/sign-ins";
import { expectAccessible, signIn } from "../support/journey";

test("the owner finds in three clicks that all humidity callbacks share one airflow setting", async ({
  page,
}) => {
  await signIn(page, TIDEWILLOW_PEOPLE.owner.email);
  await page.getByRole("link", { name: "Across jobs" }).click();
  await page.getByRole("link", { name: "Second-stage airflow setting" }).click();
  await expect(
    page.getByText(/All 3 jobs with a humidity complaint have the same second-stage airflow setting: tap 4/),
  ).toBeVisible();
  await page.getByRole("link", { name: "tap 4", exact: true }).click();
  const jobs = page.getByRole("region", { name: "Jobs with second-stage airflow setting tap 4" });
  await expect(jobs.getByRole("link", { name: /Quincy Abernot/ })).toBeVisible();
  await expectAccessible(page);
  await page.setViewportSize({ width: 390, height: 844 });
  await expectAccessible(page);
  await jobs.getByRole("link", { name: "1", exact: true }).first().click();
  await expect(page.getByRole("heading", { name: "Log a callback" })).toBeVisible();
  await expectAccessible(page);
  await page.goto(new URL("/callbacks", page.url()).href);
  await expect(page.getByRole("region", { name: "Callbacks" })).toBeVisible();
  await expectAccessible(page);
});
