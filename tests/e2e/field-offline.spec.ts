import { expect, type Page, test } from "@playwright/test";
import sharp from "sharp";
import { HICKORANE_PEOPLE, TIDEWILLOW_PEOPLE } from "../../seed/sign-ins";
import { enter, expectAllSent, openReading, walkReadings } from "../support/field-journey";
import { address, expectAccessible, signIn } from "../support/journey";
import { ownApp, phoneBrowser, signInOnPhone } from "../support/phone-browser";

const { tech, secondTech } = TIDEWILLOW_PEOPLE;

/** A whole startup as a tech types it; the office must hold exactly this, once. */
const READINGS = {
  refrigerant: "R-454B",
  meteringDevice: "expansion valve",
  targetSubcoolingF: "10",
  nameplateVolts: "240",
  ratedAmps: "18.5",
  circuitOpened: "No",
  outdoorDbF: "91",
  supplyVoltage: "238",
  outdoorUnitAmps: "11.2",
  outdoorUnitPowerW: "2400",
  secondStabilisedMin: "20",
  secondReturnDbF: "75.6",
  secondReturnWbF: "63.6",
  secondSupplyDbF: "52",
  secondSupplyWbF: "51",
  secondReturnStaticInWc: "0.22",
  secondSupplyStaticInWc: "0.28",
  secondBeforeFilterInWc: "-0.12",
  secondAirflowCfm: "852",
  secondFanPowerW: "310",
  secondSuctionPressurePsig: "105",
  secondSuctionLineF: "50",
  secondLiquidPressurePsig: "330",
  secondLiquidLineF: "97",
  secondCondensateMin: "30",
  secondCondensateLb: "3.9",
  thermostatReadsF: "75",
  trustedReadsF: "75.4",
} as const;

const asStored = (value: string) =>
  value === "No" ? false : Number.isNaN(Number(value)) ? value : Number(value);
const jobOf = (page: Page) => new URL(page.url()).searchParams.get("job") ?? "";
const openJob = async (page: Page, customer: string) => {
  await page.getByRole("link", { name: customer }).click();
  await expect(page.getByRole("heading", { name: customer, level: 1 })).toBeVisible();
  return jobOf(page);
};

/** What the office holds of a job, read as the tech's own phone would. */
async function atOffice(page: Page, jobId: string) {
  return page.evaluate(async (id) => {
    const bundle = await (await fetch("/api/field/bundle")).json();
    const job = bundle.jobs.find((one: { id: string }) => one.id === id);
    return { inputs: job?.records.startup_record?.inputs ?? {}, photos: job?.photos ?? [] };
  }, jobId);
}

test("a whole startup with photos and no network: browser killed, reopened, reconnected, everything arrives once", async ({
  launchOptions,
}) => {
  test.setTimeout(180_000);
  const app = await ownApp();
  const browser = await phoneBrowser(launchOptions);
  let context = await browser.open();
  let page = await context.newPage();
  await signInOnPhone(page, app.address, tech.email);
  const port = Number(new URL(app.address).port);
  // From here on there is no network and no server: only the service worker.
  await context.setOffline(true);
  await app.kill("SIGKILL");
  await page.goto(`${app.address}/today`);
  const jobId = await openJob(page, "Bartholomew Quay-Estrada");
  await page.getByRole("button", { name: "Begin the startup" }).click();
  await walkReadings(page, READINGS);
  // Said only when all of it is in the phone's store.
  await expect(page.getByRole("banner").getByText(/Saved on this phone/)).toBeVisible();
  await openReading(page, jobId, "photos", app.address);
  for (const [index, color] of ["#0c6355", "#a82812"].entries()) {
    const buffer = await sharp({ create: { width: 3000, height: 2000, channels: 3, background: color } })
      .jpeg()
      .toBuffer();
    await page.setInputFiles("input[type=file]", {
      name: `camera-${index}.jpg`,
      mimeType: "image/jpeg",
      buffer,
    });
    await expect(page.getByRole("figure")).toHaveCount(index + 1);
  }
  await enter(page, "notes", "Attic hatch sticks.");
  await expect(page.getByRole("banner").getByText(/Saved on this phone/)).toBeVisible();
  // Findings come from this phone alone.
  await openReading(page, jobId, "finish", app.address);
  const dry = page.getByRole("region", { name: "Will this house be dry" });
  await dry.getByRole("button", { name: "Return dry bulb, first stage" }).click();
  await expect(page.locator("#entry-firstReturnDbF")).toBeVisible();
  await openReading(page, jobId, "findings", app.address);
  await expect(page.getByRole("article").getByText(/[\d.]+ lb\/h of water/)).toBeVisible();

  await context.close();
  context = await browser.open();
  await context.setOffline(true);
  page = await context.newPage();
  await openReading(page, jobId, "secondReturnMoisture", app.address);
  await expect(page.locator("#entry-secondReturnWbF")).toHaveValue("63.6");
  await expect(page.getByText("Saved on this phone").first()).toBeVisible();

  const again = await ownApp(port);
  await context.setOffline(false);
  await page.reload();
  await expectAllSent(page);
  const held = await atOffice(page, jobId);
  const expected = Object.fromEntries(Object.entries(READINGS).map(([key, value]) => [key, asStored(value)]));
  expect(held.inputs).toMatchObject({ ...expected, notes: "Attic hatch sticks." });
  expect(held.photos).toHaveLength(2);
  for (const photo of held.photos) {
    // Shrunk on the phone: the longer side of 3000 is 1600.
    expect(photo).toMatchObject({ widthPx: 1600, caption: "Nameplate, outdoor unit", mime: "image/jpeg" });
  }
  // Nothing goes a second time.
  await page.reload();
  await expectAllSent(page);
  expect((await atOffice(page, jobId)).photos).toHaveLength(2);
  await context.close();
  await again.kill("SIGTERM");
  await browser.throwAway();
});

test("two phones on one record: both values are kept and shown, one tap decides", async ({ browser }) => {
  const contexts = [await browser.newContext(), await browser.newContext()];
  const pages = await Promise.all(contexts.map((context) => context.newPage()));
  const [tech, desk] = pages;
  if (!tech || !desk) throw new Error("two pages are needed");
  for (const page of pages) {
    await signIn(page, TIDEWILLOW_PEOPLE.tech.email);
    await page.setViewportSize({ width: 390, height: 844 });
    await page.goto(address("/today"));
  }
  const jobId = await openJob(tech, "Euphemia Tran-Ludlow");
  for (const page of pages) await page.evaluate(async () => void (await navigator.serviceWorker.ready));
  for (const context of contexts) await context.setOffline(true);
  await openJob(desk, "Euphemia Tran-Ludlow");
  await tech.getByRole("button", { name: "Begin the startup" }).click();
  await desk.getByRole("button", { name: "Begin the startup" }).click();
  await walkReadings(tech, { outdoorDbF: "91", supplyVoltage: "240" });
  await walkReadings(desk, { outdoorDbF: "95", outdoorUnitAmps: "11" });
  await contexts[0]?.setOffline(false);
  await expectAllSent(tech);
  await contexts[1]?.setOffline(false);
  await expect(desk.getByRole("banner").getByText(/Needs you/)).toBeVisible({ timeout: 20_000 });
  await openReading(desk, jobId, "needs-you");
  await expect(desk.getByRole("button", { name: "Yours: 95 °F" })).toBeVisible();
  await expect(desk.getByRole("button", { name: "Theirs: 91 °F" })).toBeVisible();
  await expectAccessible(desk);
  expect((await atOffice(desk, jobId)).inputs).toMatchObject({
    outdoorDbF: 91,
    supplyVoltage: 240,
    outdoorUnitAmps: 11,
  });
  await desk.getByRole("button", { name: "Yours: 95 °F" }).click();
  await expectAllSent(desk);
  expect((await atOffice(desk, jobId)).inputs).toMatchObject({ outdoorDbF: 95 });
  for (const context of contexts) await context.close();
});

test("a signal that goes before the screens of a job have come: the page says so and gets them with the next", async ({
  browser,
}) => {
  // Without the worker, which would have them all a moment later.
  const page = await (await browser.newContext({ serviceWorkers: "block" })).newPage();
  await signIn(page, tech.email);
  const first = await (await page.request.get(address("/today"))).text();
  let isCut = true;
  await page.route(/_next\/static\/chunks\//, (route) =>
    isCut && !first.includes(new URL(route.request().url()).pathname) ? route.abort() : route.continue(),
  );
  await page.goto(address("/today"));
  await page.getByRole("link", { name: "Euphemia Tran-Ludlow" }).click();
  await expect(page.getByText("Getting the screens of this job…")).toBeVisible();
  isCut = false;
  await expect(page.getByRole("link", { name: /^Call / })).toBeVisible({ timeout: 20_000 });
  await page.context().close();
});

test("a tech sees only assigned jobs, offline too; another person at the phone sees nothing of them", async ({
  page,
  context,
}) => {
  await signIn(page, tech.email);
  await page.goto(address("/today"));
  await expect(page.getByRole("link", { name: "Bartholomew Quay-Estrada" })).toBeVisible();
  const own = await page.getByRole("listitem").allTextContents();
  const unassigned = await page.evaluate(async () => {
    const bundle = await (await fetch("/api/field/bundle")).json();
    return bundle.jobs.length;
  });
  expect(own).toHaveLength(unassigned);
  await context.setOffline(true);
  await page.reload();
  await expect(page.getByRole("listitem")).toHaveCount(own.length);

  // Who has something unsent is asked; signed out without a signal the phone shows nothing, and the sign-in ends with the signal.
  const jobId = await openJob(page, "Bartholomew Quay-Estrada");
  await openReading(page, jobId, "photos");
  await enter(page, "notes", "Not sent.");
  await page.goto(address("/today"));
  await page.getByRole("button", { name: "Sign out" }).click();
  await expect(page.getByRole("alertdialog").getByText("One entry has not been sent")).toBeVisible();
  await expectAccessible(page);
  await page.getByRole("button", { name: "Sign out without sending" }).click();
  await expect(page.getByText(/holds no jobs yet/)).toBeVisible();
  await context.setOffline(false);
  await page.waitForURL(/\/sign-in/);
  await context.setOffline(true);
  await page.goto(address("/today"));
  await expect(page.getByText(/holds no jobs yet/)).toBeVisible();
  await expect(page.getByText("Bartholomew Quay-Estrada")).toBeHidden();
  // With a network again, a phone that holds nothing leads to the sign-in by itself.
  await context.setOffline(false);
  await page.waitForURL(/\/sign-in/);

  await signIn(page, secondTech.email);
  await page.goto(address("/today"));
  await expect(page.getByText(secondTech.name).first()).toBeVisible();
  await expect(page.getByText("Bartholomew Quay-Estrada")).toBeHidden();
});

test("after removal from the company the phone offers what it holds and is erased", async ({ browser }) => {
  const phone = await (await browser.newContext()).newPage();
  await signIn(phone, HICKORANE_PEOPLE.secondTech.email);
  await phone.goto(address("/today"));
  await phone.getByRole("listitem").first().getByRole("link").click();
  const jobId = jobOf(phone);
  // The phone's own copy of the page is kept once the service worker is active.
  await phone.evaluate(async () => void (await navigator.serviceWorker.ready));
  await phone.context().setOffline(true);
  await openReading(phone, jobId, "photos");
  await enter(phone, "notes", "Written in the attic.");

  const desk = await (await browser.newContext()).newPage();
  await signIn(desk, HICKORANE_PEOPLE.owner.email);
  await desk.goto(address("/company/members"));
  await desk
    .getByRole("row", { name: new RegExp(HICKORANE_PEOPLE.secondTech.name) })
    .getByRole("button", { name: /remove/i })
    .click();
  await desk
    .getByRole("dialog")
    .getByRole("button", { name: /remove/i })
    .click();
  await expect(desk.getByRole("row", { name: new RegExp(HICKORANE_PEOPLE.secondTech.name) })).toBeHidden();

  await phone.context().setOffline(false);
  await phone.reload();
  await expect(phone.getByText(/You no longer work for/)).toBeVisible({ timeout: 20_000 });
  const left = await phone.evaluate(async () => {
    const db = await new Promise<IDBDatabase>((done) => {
      const opening = indexedDB.open("dewledger-field");
      opening.onsuccess = () => done(opening.result);
    });
    const counts = [...db.objectStoreNames].map(
      (name) =>
        new Promise<number>((done) => {
          const counting = db.transaction(name).objectStore(name).count();
          counting.onsuccess = () => done(counting.result);
        }),
    );
    return (await Promise.all(counts)).reduce((sum, one) => sum + one, 0);
  });
  expect(left).toBe(0);
  await phone.context().close();
  await desk.context().close();
});

test.describe("the screens", () => {
  for (const width of [390, 360]) {
    test(`fit ${width} px, hold no barrier, and go by keyboard and torch`, async ({ page }) => {
      await page.setViewportSize({ width, height: 780 });
      await signIn(page, tech.email);
      await page.goto(address("/today"));
      await expectFits(page);
      const jobId = await openJob(page, "Ignatius Fairweather-Cho");
      await expectFits(page);
      for (const screen of [
        "secondReturnDbF",
        "secondReturnMoisture",
        "secondAirflowCfm",
        "secondCondensate",
        "settings",
        "photos",
        "findings",
        "finish",
      ]) {
        await openReading(page, jobId, screen);
        await expect(page.getByRole("heading", { level: 1 })).toBeVisible();
        await expectFits(page);
      }
      await openReading(page, jobId, "secondReturnDbF");
      await page.locator("#entry-secondReturnDbF").focus();
      await page.keyboard.press("Enter");
      await expect(page).toHaveURL(/at=secondReturnMoisture/);
      await page.keyboard.press("PageUp");
      await expect(page).toHaveURL(/at=secondReturnDbF/);
      await page.goto(address("/today"));
      await page.getByRole("button", { name: "Strong contrast for a torch" }).click();
      await openReading(page, jobId, "secondReturnDbF");
      await expectFits(page);
      await page.goto(address("/today"));
      await page.getByRole("button", { name: "Usual colours" }).click();
    });
  }
});

/** Nothing is cut off, nothing is in the way, and every target is 44 px. */
async function expectFits(page: Page): Promise<void> {
  await expect(page.getByRole("main")).toBeVisible();
  await page.waitForLoadState("networkidle");
  expect(
    await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth),
  ).toBeLessThanOrEqual(0);
  const small = await page
    .locator("main button, main a, main select, main input:not([type=file]), footer button")
    .evaluateAll((all) =>
      all
        .filter((one) => one.getClientRects().length > 0 && !one.closest("label"))
        .filter((one) => one.getBoundingClientRect().height < 44)
        .map((one) => `${one.tagName} ${one.textContent?.trim()}`),
    );
  expect(small).toEqual([]);
  await expectAccessible(page);
}
