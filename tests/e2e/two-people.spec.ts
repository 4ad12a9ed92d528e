import { expect, test } from "@playwright/test";
import { DEMO_PASSWORD, TIDEWILLOW_PEOPLE } from "../../seed/sign-ins";
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

  // A refused entry is still there after a look at another page.
  await page.goto(address(record));
  await fillStage(page, { floorAreaFt2: "22000000" });
  await expect(page.getByText(/22000000 ft² cannot be right/).first()).toBeVisible();
  await page.getByRole("link", { name: "Equipment selection" }).first().click();
  await page.waitForURL(/equipment-selection$/);
  await page.getByRole("link", { name: "Load summary" }).first().click();
  await expect(page.locator("#field-floorAreaFt2")).toHaveValue("22000000");
  await expect(page.getByText(/22000000 ft² cannot be right/).first()).toBeVisible();

  // Without a connection nothing typed is lost, and what saves itself does so when the connection is back.
  await page.context().setOffline(true);
  await fillStage(page, { floorAreaFt2: "2200" });
  await expect(page.getByText(/No connection to the server/).first()).toBeVisible();
  await page.context().setOffline(false);
  await expect(page.getByText(/^Saved/).first()).toBeVisible();

  // The sign-in ends while typing: the password is asked for on the spot, and the entry is saved.
  await page.context().clearCookies();
  await fillStage(page, { floorAreaFt2: "2300" });
  const ended = page.getByRole("dialog", { name: "Your sign-in has ended" });
  await ended.getByLabel("Password").fill(DEMO_PASSWORD);
  await ended.getByRole("button", { name: "Sign in" }).click();
  await expect(ended).toBeHidden();
  await expect(page.getByText(/^Saved/).first()).toBeVisible();
  await page.reload();
  await expect(page.locator("#field-floorAreaFt2")).toHaveValue("2300");

  // Signing straight after a key does not leave that entry behind, and a refused entry keeps it from being signed.
  const sign = () => page.getByRole("button", { name: "Sign", exact: true }).click();
  await fillStage(page, { floorAreaFt2: "99" });
  await sign();
  await expect(page.getByText(/Something in the form above is not saved/)).toBeVisible();
  await fillStage(page, { floorAreaFt2: "2400" });
  await sign();
  await expect(page.getByText(/is needed before this can be signed/).first()).toBeVisible();
  await page.goto(address(record));
  await expect(page.locator("#field-floorAreaFt2")).toHaveValue("2400");

  await page.goto(address("/jobs/new"));
  await page.getByLabel("Customer name").fill("Odette Brackwater-Lyle");
  await page.context().setOffline(true);
  await page.getByRole("button", { name: "Open the job" }).click();
  await expect(page.getByText(/No connection to the server/)).toBeVisible();
  await expect(page.getByLabel("Customer name")).toHaveValue("Odette Brackwater-Lyle");
  await page.context().setOffline(false);

  // What was taken down wrong, or is known only now, is put right in the job.
  const rest = {
    addressLine: "12 Reed Lane",
    city: "Saltmere",
    region: "TX",
    postalCode: "77550",
    elevationFt: "12 ft",
  };
  for (const [name, value] of Object.entries(rest)) await page.locator(`[name="${name}"]`).fill(value);
  await page.getByRole("button", { name: "Open the job" }).click();
  await page.waitForURL(/\/jobs\/[0-9a-f-]{36}$/);
  await page.getByRole("button", { name: "Correct", exact: true }).click();
  const correction = page.getByRole("dialog", { name: "Correct customer and home" });
  await correction.getByLabel("Phone").fill("555-0177");
  // A field with a message to say is left by pressing the button: the press counts, though the message moves the page.
  await correction.getByLabel("ZIP code").fill("");
  await correction.getByLabel("Elevation").fill("20 m");
  await correction.getByRole("button", { name: "Save the correction" }).click();
  await expect(correction.getByText("ZIP code is needed.").first()).toBeVisible();
  await correction.getByLabel("ZIP code").fill("77550");
  await correction.getByLabel("Elevation").fill("66");
  await correction.getByRole("button", { name: "Save the correction" }).click();
  await expect(correction).toBeHidden();
  await expect(page.getByText("555-0177")).toBeVisible();
});
