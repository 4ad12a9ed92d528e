import { expect, type Page, test } from "@playwright/test";
import { TIDEWILLOW_PEOPLE } from "../../seed/sign-ins";
import { address, expectAccessible, fillStage, signIn } from "../support/journey";

/** Opens a job of its own, so that the journeys at two widths do not meet. */
async function openJob(page: Page, customer: string): Promise<string> {
  await signIn(page, TIDEWILLOW_PEOPLE.office.email);
  await page.goto(address("/jobs/new"));
  for (const [name, value] of Object.entries({
    customerName: customer,
    addressLine: "4 Ember Lane",
    city: "Bay",
    region: "TX",
    postalCode: "77000",
    elevationFt: "30",
  }))
    await page.locator(`[name="${name}"]`).fill(value);
  await page.locator('select[name="weatherFileId"]').selectOption({ index: 1 });
  await page.getByRole("button", { name: "Open the job" }).click();
  await page.waitForURL(/\/jobs\/[0-9a-f-]{36}$/);
  return new URL(page.url()).pathname;
}

const saved = (page: Page) => expect(page.getByText(/^Saved/).first()).toBeVisible({ timeout: 15_000 });
const LOAD = {
  sensibleCoolingBtuh: "24,000 Btu/h",
  latentCoolingBtuh: "6000",
  indoorCoolingRhPct: "50%",
  outdoorCoolingDbF: "95",
  outdoorCoolingWbF: "77",
  humidityLimitPct: "55",
  floorAreaFt2: "2,000 ft²",
};

for (const width of [1_280, 390]) {
  test.describe(`at ${width} px`, () => {
    test.use({ viewport: { width, height: 900 } });

    test("a load is entered, saves itself, and its indoor temperature is found padded", async ({ page }) => {
      const job = await openJob(page, `Load ${width}`);
      await page.goto(address(`${job}/load-summary`));
      await page.getByRole("button", { name: /^Enter 1 % cooling dry bulb/ }).click();
      await expect(page.locator("#field-outdoorCoolingDbF")).not.toHaveValue("");
      await page.getByRole("button", { name: "Undo" }).click();
      await expect(page.locator("#field-outdoorCoolingDbF")).toHaveValue("");
      await fillStage(page, { ...LOAD, indoorCoolingDbF: "70", bedrooms: "three" });
      await expect(page.getByText(/^Not saved: .*Bedrooms/).first()).toBeVisible({ timeout: 15_000 });
      await page.locator("#field-bedrooms").fill("3");
      await saved(page);
      await expect(page.getByText(/Indoor design temperature, cooling is 70\.0 °F/).first()).toBeVisible();
      await expect(page.getByRole("heading", { name: /falls short/i }).first()).toBeVisible();
      await page
        .getByLabel(/^Reason: .*[Ii]ndoor/)
        .first()
        .fill("A patient in the house");
      await expect(page.getByText("Recorded reason: A patient in the house").first()).toBeVisible();
      await saved(page);
      await expectAccessible(page);
      await page.reload();
      await expect(page.locator("#field-sensibleCoolingBtuh")).toHaveValue("24000");
      await expect(page.getByText("Recorded reason: A patient in the house").first()).toBeVisible();
    });

    test("a second stage that starts with the first is warned of", async ({ page }) => {
      const job = await openJob(page, `Controls ${width}`);
      await page.goto(address(`${job}/control-setup`));
      await page.locator('select[name="controlModelId"]').selectOption({ index: 1 });
      await fillStage(page, { firstStageStartOffsetF: "1", secondStageStartOffsetF: "1" });
      await saved(page);
      await expect(page.getByText(/second stage/i).first()).toBeVisible();
      await expect(page.getByRole("heading", { name: /falls short/i }).first()).toBeVisible();
      await expect(page.getByRole("table", { name: /Control settings/ })).toContainText("1 °F");
      await expectAccessible(page);
    });

    test("an option is chosen and all later records are filled", async ({ page }) => {
      const job = await openJob(page, `Options ${width}`);
      await page.goto(address(`${job}/load-summary`));
      await fillStage(page, { ...LOAD, indoorCoolingDbF: "75" });
      await saved(page);
      await page.goto(address(`${job}/options`));
      await page.getByRole("button", { name: "Add an option from the equipment selection" }).click();
      await page.getByRole("button", { name: "Change", exact: true }).click();
      await page.locator('select[name="equipmentModelId"]').selectOption({ index: 1 });
      const capacity = page.locator('select[name="capacitySetting"]');
      await expect(capacity.locator("option")).not.toHaveCount(1);
      await capacity.selectOption({ index: 1 });
      await page.locator('select[name="secondStageAirflowSetting"]').selectOption({ index: 1 });
      await fillStage(page, {
        label: "Small and slow",
        designExternalStaticInWc: '0.5"',
        colderCoilCooling: "no",
      });
      await page.getByRole("button", { name: "Save option" }).click();
      const table = page.getByRole("table", { name: "Options side by side" });
      await expect(table.getByText("Small and slow")).toBeVisible();
      await expectAccessible(page);
      await expect(page.getByText("One option is no comparison")).toBeVisible();
      await page.getByRole("button", { name: "More for Small and slow" }).click();
      await page.getByRole("menuitem", { name: "Duplicate" }).click();
      await expect(page.getByText("One option is no comparison")).toBeHidden();
      await page.getByRole("button", { name: "Choose", exact: true }).first().click();
      await page.getByLabel("Why this one").fill("Dries best");
      await page.getByRole("button", { name: "Choose and fill the records" }).click();
      await expect(page.getByText("Chosen: Small and slow.")).toBeVisible();
      await page.goto(address(job));
      await expect(page.getByText("Chosen: Small and slow.")).toBeVisible();
      await expectAccessible(page);
      await page.goto(address(`${job}/equipment-selection`));
      await expect(page.locator("#field-reason")).toHaveValue("Dries best");
      await expect(page.locator("#field-capacitySetting")).not.toHaveValue("");
      await page.goto(address(`${job}/airflow-setup`));
      await expect(page.locator("#field-designExternalStaticInWc")).toHaveValue("0.5");
      await page.goto(address(`${job}/control-setup`));
      await expect(page.locator('[name="colderCoilCooling"][value="no"]')).toBeChecked();
      await page.goto(address(`${job}/trail`));
      await expect(page.getByText("Dries best").first()).toBeVisible();
    });
  });
}
