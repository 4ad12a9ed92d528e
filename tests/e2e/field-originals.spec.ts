import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import { expect, test } from "@playwright/test";
import sharp from "sharp";
import { TIDEWILLOW_PEOPLE } from "../../seed/sign-ins";
import { expectAllSent, openReading } from "../support/field-journey";
import { address, expectAccessible, signIn } from "../support/journey";
import { phoneBrowser, signInOnPhone } from "../support/phone-browser";

const sha256Of = (bytes: Buffer) => createHash("sha256").update(bytes).digest("hex");

test("a photo taken offline: the office asks for its original, the phone sends it, the office opens the camera's bytes", async ({
  browser,
  launchOptions,
}) => {
  test.setTimeout(120_000);
  const camera = await sharp({ create: { width: 2800, height: 2100, channels: 3, background: "#5a2b8a" } })
    .jpeg()
    .toBuffer();
  const pocket = await phoneBrowser(launchOptions);
  const context = await pocket.open();
  const page = await context.newPage();
  await signInOnPhone(page, address(""), TIDEWILLOW_PEOPLE.tech.email);
  await page.getByRole("link", { name: "Euphemia Tran-Ludlow" }).click();
  await expect(page.getByRole("heading", { name: "Euphemia Tran-Ludlow", level: 1 })).toBeVisible();
  const jobId = new URL(page.url()).searchParams.get("job") ?? "";
  await context.setOffline(true);
  await openReading(page, jobId, "photos");
  await page.getByLabel("What it shows").selectOption("Drain and trap");
  await page.setInputFiles("input[type=file]", {
    name: "camera.jpg",
    mimeType: "image/jpeg",
    buffer: camera,
  });
  await expect(page.getByRole("figure").getByText("Drain and trap")).toBeVisible();
  await context.setOffline(false);
  await page.reload();
  await expectAllSent(page);
  await expect(page.getByText("Originals for the office")).toBeHidden();
  await expect(page.getByRole("link", { name: "Full picture" })).toBeVisible();

  const desk = await (await browser.newContext()).newPage();
  await signIn(desk, TIDEWILLOW_PEOPLE.office.email);
  await desk.goto(address(`/jobs/${jobId}/field`));
  const photo = desk.getByRole("listitem").filter({ hasText: "Drain and trap" });
  await photo.getByRole("button", { name: "Ask for the original" }).click();
  await expect(photo.getByText("Original asked for")).toBeVisible();

  await page.reload();
  const line = page
    .getByRole("listitem")
    .filter({ hasText: "Original of “Drain and trap” asked for by the office" });
  await expect(line.getByText("Sent", { exact: true })).toBeVisible({ timeout: 20_000 });
  await expect(page.getByRole("link", { name: "Full picture" })).toBeHidden();
  await expectAccessible(page);
  await desk.reload();
  await expect(photo.getByText("Original received")).toBeVisible();
  await expectAccessible(desk);
  const coming = desk.waitForEvent("download");
  await photo.getByRole("link", { name: "open it" }).click();
  expect(sha256Of(await readFile(await (await coming).path()))).toBe(sha256Of(camera));
  await desk.context().close();
  await context.close();
  await pocket.throwAway();
});
