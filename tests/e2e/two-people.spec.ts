import { expect, test } from "@playwright/test";
import { TIDEWILLOW_PEOPLE } from "../../seed/sign-ins";
import { address, fillStage, saveStage, signIn } from "../support/journey";

test("two people save the same record: nothing is lost, both values are shown", async ({ page, browser }) => {
  await signIn(page, TIDEWILLOW_PEOPLE.office.email);
  await page.goto(address("/jobs?search=Wexcombe"));
  await page.getByRole("table", { name: "Jobs" }).locator("tbody").getByRole("link").first().click();
  await page.waitForURL(/\/jobs\/[0-9a-f-]{36}$/);
  const record = `${new URL(page.url()).pathname}/load-summary`;

  const second = await (await browser.newContext()).newPage();
  await signIn(second, TIDEWILLOW_PEOPLE.owner.email);
  await page.goto(address(record));
  await second.goto(address(record));

  await fillStage(page, { sensibleCoolingBtuh: "24000", bedrooms: "3" });
  await saveStage(page);
  await fillStage(second, { sensibleCoolingBtuh: "25500", floorAreaFt2: "2100" });
  await second.getByRole("button", { name: "Save", exact: true }).click();

  const notice = second.getByRole("alert").filter({ hasText: "These differ" });
  await expect(notice).toBeVisible();
  await expect(
    notice.getByText(/Sensible cooling load: yours 25500 Btu\/h, theirs 24000 Btu\/h/),
  ).toBeVisible();
  await expect(second.locator("#field-sensibleCoolingBtuh")).toHaveValue("25500");

  await second.getByRole("button", { name: "Save mine over theirs" }).click();
  await expect(second.getByText(/^Saved/).first()).toBeVisible();
  await page.goto(address(record));
  await expect(page.locator("#field-sensibleCoolingBtuh")).toHaveValue("25500");
  await page.goto(address(record.replace("load-summary", "trail")));
  await expect(page.getByText("Load summary saved").nth(1)).toBeVisible();
  await second.context().close();
});
