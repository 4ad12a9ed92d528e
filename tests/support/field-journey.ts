import { expect, type Page } from "@playwright/test";
import { address } from "./journey";

/** Opens one screen of the phone for a job. */
export async function openReading(
  page: Page,
  jobId: string,
  screen: string,
  at = address(""),
): Promise<void> {
  await page.goto(`${at}/today?job=${jobId}&at=${screen}`);
}

/** Enters what an open screen asks: text for numbers, a label for choices. */
export async function enter(page: Page, field: string, value: string): Promise<void> {
  const entry = page.locator(`#entry-${field}`);
  await expect(entry).toBeVisible();
  const kind = await entry.evaluate((element) => element.tagName);
  if (kind === "FIELDSET") await entry.getByRole("button", { name: value, exact: true }).click();
  else if (kind === "SELECT") await entry.selectOption({ label: value });
  else await entry.fill(value);
}

/** Walks the open job from its first reading with "Next", entering what is given and passing over the rest. */
export async function walkReadings(page: Page, values: Readonly<Record<string, string>>): Promise<void> {
  const left = new Set(Object.keys(values));
  const counter = page.getByText(/^Screen \d+ of \d+$/);
  for (let screen = 0; left.size > 0 && screen < 60; screen++) {
    const shown = (await counter.textContent()) ?? "";
    for (const field of [...left]) {
      if (!(await page.locator(`#entry-${field}`).isVisible())) continue;
      await enter(page, field, values[field] ?? "");
      left.delete(field);
    }
    if (left.size === 0) break;
    await page.getByRole("button", { name: "Next", exact: true }).click();
    await expect(page.getByText(shown, { exact: true })).toBeHidden();
    if (page.url().includes("at=settings")) break;
  }
  expect([...left]).toEqual([]);
}

/** Everything entered is with the office. */
export async function expectAllSent(page: Page): Promise<void> {
  await expect(page.getByRole("banner").getByText("Sent", { exact: true })).toBeVisible({ timeout: 20_000 });
}
