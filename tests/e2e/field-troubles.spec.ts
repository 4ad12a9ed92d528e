import { expect, type Page, test } from "@playwright/test";
import { TIDEWILLOW_PEOPLE } from "../../seed/sign-ins";
import { enter, expectAllSent, openReading } from "../support/field-journey";
import { address, signIn } from "../support/journey";
import { phoneBrowser, signInOnPhone } from "../support/phone-browser";
import { PHOTO } from "../support/photo";

const { tech, office } = TIDEWILLOW_PEOPLE;
const CUSTOMER = "Ignatius Fairweather-Cho";

/** Opens the job from the list and answers its id. */
async function openJob(page: Page): Promise<string> {
  await page.getByRole("link", { name: CUSTOMER }).click();
  await expect(page.getByRole("heading", { name: CUSTOMER, level: 1 })).toBeVisible();
  return new URL(page.url()).searchParams.get("job") ?? "";
}

/** The job as the office tells it to the tech's own phone. */
async function atOffice(page: Page, jobId: string) {
  return page.evaluate(async (id) => {
    const bundle = await (await fetch("/api/field/bundle")).json();
    const job = bundle.jobs.find((one: { id: string }) => one.id === id);
    const record = job?.records.startup_record;
    return { inputs: record?.inputs ?? {}, updatedAt: record?.updatedAt, photos: job?.photos ?? [] };
  }, jobId);
}

test("the browser is killed with signal 9 and the sign-in has ended: every reading and photo arrives once", async ({
  launchOptions,
}) => {
  const browser = await phoneBrowser(launchOptions);
  let context = await browser.open();
  let page = await context.newPage();
  await signInOnPhone(page, address(""), tech.email);
  const jobId = await openJob(page);
  const before = (await atOffice(page, jobId)).photos.length;
  // The browser writes its memory of whose phone it is down with a delay; a crew is longer on its way to the attic.
  await page.waitForTimeout(6_000);
  await context.setOffline(true);
  await openReading(page, jobId, "outdoorDbF");
  await enter(page, "outdoorDbF", "93.5");
  await openReading(page, jobId, "photos");
  const photo = { name: "camera.jpg", mimeType: "image/jpeg", buffer: Buffer.from(PHOTO) };
  await page.setInputFiles("input[type=file]", photo);
  await expect(page.getByRole("figure")).toHaveCount(1);
  await enter(page, "notes", "Killed in the attic.");
  // What is said to be kept must be kept; what is typed in the last moment is the next test's matter.
  await expect(page.getByRole("banner").getByText(/Saved on this phone/)).toBeVisible();
  await browser.killNine(context);

  context = await browser.open();
  await context.setOffline(true);
  page = await context.newPage();
  await openReading(page, jobId, "photos");
  await expect(page.locator("#entry-notes")).toHaveValue("Killed in the attic.");
  await expect(page.getByRole("figure")).toHaveCount(1);
  await openReading(page, jobId, "outdoorDbF");
  await expect(page.locator("#entry-outdoorDbF")).toHaveValue("93.5");

  // The signal is back, and meanwhile the sign-in has ended.
  await context.clearCookies();
  await context.setOffline(false);
  await page.reload();
  await expect(page.getByText("Your sign-in has ended").first()).toBeVisible({ timeout: 20_000 });
  await expect(page.locator("#entry-outdoorDbF")).toHaveValue("93.5");
  await signInOnPhone(page, address(""), tech.email);
  await expectAllSent(page);
  const held = await atOffice(page, jobId);
  expect(held.inputs).toMatchObject({ outdoorDbF: 93.5, notes: "Killed in the attic." });
  expect(held.photos).toHaveLength(before + 1);
  await page.reload();
  await expectAllSent(page);
  expect((await atOffice(page, jobId)).photos).toHaveLength(before + 1);
  await context.close();
  await browser.throwAway();
});

test("a phone whose clock is seven hours ahead: readings arrive, and the office's times are the office's", async ({
  page,
  context,
}) => {
  await context.addInitScript(() => {
    const Real = Date;
    const AHEAD_MS = 7 * 3_600_000;
    globalThis.Date = class extends Real {
      constructor(...given: unknown[]) {
        super(...((given.length === 0 ? [Real.now() + AHEAD_MS] : given) as [number]));
      }
      static override now() {
        return Real.now() + AHEAD_MS;
      }
    } as DateConstructor;
  });
  await signIn(page, tech.email);
  await page.goto(address("/today"));
  const jobId = await openJob(page);
  expect(await page.evaluate(() => Date.now())).toBeGreaterThan(Date.now() + 6 * 3_600_000);
  await openReading(page, jobId, "outdoorDbF");
  await enter(page, "outdoorDbF", "94.5");
  await expectAllSent(page);
  const { inputs, updatedAt } = await atOffice(page, jobId);
  expect(inputs).toMatchObject({ outdoorDbF: 94.5 });
  expect(Math.abs(Date.parse(updatedAt) - Date.now())).toBeLessThan(120_000);
});

test("the office sees progress without loading again, and its question is on the phone at the next contact", async ({
  page,
  browser,
}) => {
  await signIn(page, tech.email);
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto(address("/today"));
  const jobId = await openJob(page);
  const desk = await (await browser.newContext()).newPage();
  await signIn(desk, office.email);
  await desk.goto(address(`/jobs/${jobId}/field`));
  const progress = desk.getByText(/\d+ entered/);
  const before = Number(/(\d+) entered/.exec((await progress.textContent()) ?? "")?.[1]);
  await desk.evaluate(() => Object.assign(window, { samePage: true }));
  await openReading(page, jobId, "outdoorUnitAmps");
  await enter(page, "outdoorUnitAmps", "10.4");
  await expectAllSent(page);
  await expect(progress).toContainText(`${before + 1} entered`, { timeout: 20_000 });
  expect(await desk.evaluate(() => "samePage" in window)).toBe(true);

  await desk.getByLabel("Question", { exact: true }).fill("Is the drain trapped?");
  await desk.getByRole("button", { name: "Ask", exact: true }).click();
  await expect(desk.getByText("No answer yet.").first()).toBeVisible();
  await page.goto(address(`/today?job=${jobId}`));
  await expect(page.getByText("Is the drain trapped?")).toBeVisible({ timeout: 20_000 });
  await page.getByLabel("Your answer").first().fill("Yes, two inches.");
  await page.getByRole("button", { name: "Answer", exact: true }).first().click();
  await expect(async () => {
    await desk.reload();
    await expect(desk.getByText("Yes, two inches.")).toBeVisible({ timeout: 1_000 });
  }).toPass({ timeout: 20_000 });
  await desk.context().close();
});
