import { expect, type Page, test } from "@playwright/test";
import { TIDEWILLOW_PEOPLE } from "../../seed/sign-ins";
import { enter, expectAllSent, openReading } from "../support/field-journey";
import { address, signIn } from "../support/journey";
import { PHOTO } from "../support/photo";

const CUSTOMER = "Ignatius Fairweather-Cho";
const FULL = /storage is full. What you entered last is only in this page’s memory/;

async function jobOf(page: Page): Promise<string> {
  await page.goto(address("/today"));
  await page.getByRole("link", { name: CUSTOMER }).click();
  await expect(page.getByRole("heading", { name: CUSTOMER, level: 1 })).toBeVisible();
  return new URL(page.url()).searchParams.get("job") ?? "";
}

/** The disk is full: as browsers do, each write ends its transaction with the quota's error, when it would be kept. */
function fillDisk() {
  const write = IDBObjectStore.prototype.put;
  Object.assign(window, { diskIsFull: false });
  IDBObjectStore.prototype.put = function put(...given) {
    const request = write.apply(this, given);
    if (!("diskIsFull" in window && window.diskIsFull)) return request;
    const { transaction } = this;
    // One transaction may write twice.
    const why = new DOMException("Quota exceeded", "QuotaExceededError");
    Object.defineProperty(transaction, "error", { get: () => why, configurable: true });
    request.addEventListener("success", () => transaction.abort());
    return request;
  };
}

test("a full phone says so, keeps on the screen what is typed, and keeps it when there is room", async ({
  page,
}) => {
  await page.addInitScript(fillDisk);
  await page.setViewportSize({ width: 390, height: 844 });
  await signIn(page, TIDEWILLOW_PEOPLE.tech.email);
  const jobId = await jobOf(page);
  await openReading(page, jobId, "outdoorDbF");
  await expectAllSent(page);
  await page.evaluate(() => Object.assign(window, { diskIsFull: true }));
  await enter(page, "outdoorDbF", "96.5");
  await expect(page.getByText(FULL)).toBeVisible();
  await expect(page.getByRole("banner").getByText("Sent", { exact: true })).toBeHidden();
  // What was typed stays while the page is open, on other screens too.
  await page.getByRole("button", { name: "Next", exact: true }).click();
  await expect(page.locator("#entry-outdoorDbF")).toBeHidden();
  await page.getByRole("button", { name: "Back", exact: true }).click();
  await expect(page.locator("#entry-outdoorDbF")).toHaveValue("96.5");
  // A picture that cannot be kept is not said to be.
  const photo = { name: "camera.jpg", mimeType: "image/jpeg", buffer: Buffer.from(PHOTO) };
  const figures = await page.getByRole("figure").count();
  await page.setInputFiles("input[type=file]", photo);
  await expect(page.getByText(/the picture was not kept. Free some space, then take it again/)).toBeVisible();
  expect(await page.getByRole("figure").count()).toBe(figures);

  await page.evaluate(() => Object.assign(window, { diskIsFull: false }));
  await expect(page.getByText(FULL)).toBeHidden({ timeout: 15_000 });
  await page.setInputFiles("input[type=file]", photo);
  await expect(page.getByText(/the picture was not kept/)).toBeHidden();
  await expectAllSent(page);
  await page.reload();
  await expect(page.locator("#entry-outdoorDbF")).toHaveValue("96.5");
  await expectAllSent(page);
});

test("what an older version of the page kept opens in this one and is sent", async ({ page }) => {
  await page.setViewportSize({ width: 390, height: 844 });
  await signIn(page, TIDEWILLOW_PEOPLE.tech.email);
  const jobId = await jobOf(page);
  await openReading(page, jobId, "outdoorDbF");
  await expectAllSent(page);
  await page.context().setOffline(true);
  await enter(page, "outdoorDbF", "97.5");
  await expect(page.getByRole("banner").getByText(/Saved on this phone/)).toBeVisible();
  // As the first version kept it: without clocks.
  await page.evaluate(async () => {
    const asked = indexedDB.open("dewledger-field");
    await new Promise((done) => asked.addEventListener("success", done));
    const tx = asked.result.transaction("drafts", "readwrite");
    const cursor = tx.objectStore("drafts").openCursor();
    cursor.addEventListener("success", () => {
      const { result } = cursor;
      if (!result) return;
      const { clocks: _, ...draft } = result.value;
      result.update({ ...draft, draftVersion: 1 });
      result.continue();
    });
    await new Promise((done) => tx.addEventListener("complete", done));
    asked.result.close();
  });
  await page.reload();
  await expect(page.locator("#entry-outdoorDbF")).toHaveValue("97.5");
  await page.context().setOffline(false);
  await expectAllSent(page);
  await page.reload();
  await expect(page.locator("#entry-outdoorDbF")).toHaveValue("97.5");

  // Another page of the phone has loaded a newer version: this one follows, but not before it is out of sight.
  await page.evaluate(() => {
    Object.assign(window, { isOld: true });
    navigator.serviceWorker.dispatchEvent(new Event("controllerchange"));
  });
  expect(await page.evaluate(() => "isOld" in window)).toBe(true);
  await page.evaluate(() => {
    Object.defineProperty(document, "hidden", { value: true });
    document.dispatchEvent(new Event("visibilitychange"));
  });
  await page.waitForFunction(() => !("isOld" in window));
  await expect(page.locator("#entry-outdoorDbF")).toHaveValue("97.5");
});
