import { expect, type Page, test } from "@playwright/test";
import { TIDEWILLOW_PEOPLE } from "../../seed/sign-ins";
import { plantedHouse } from "../engineering/logs/planted/planted-house";
import { address, expectAccessible, saveStage, signIn, signStage } from "../support/journey";

/** Four summer weeks of an invented house whose fan never stops, in headings that say nothing and in °C. */
function strangeLog(): string {
  const { timeMs, channels } = plantedHouse("fan-between-calls", 3).samples;
  const celsius = (f: number | undefined) => (((f ?? 0) - 32) / 1.8).toFixed(2).replace(".", ",");
  const of = (column: Float64Array | undefined, at: number) =>
    (column?.[at] ?? 0).toFixed(2).replace(".", ",");
  const lines = Array.from(timeMs, (time, at) => {
    const stamp = new Date(time).toISOString();
    return [
      `${stamp.slice(8, 10)}.${stamp.slice(5, 7)}.${stamp.slice(0, 4)} ${stamp.slice(11, 16)}`,
      celsius(channels.indoorF?.[at]),
      of(channels.indoorRhPct, at),
      celsius(channels.outdoorF?.[at]),
      of(channels.outdoorRhPct, at),
      of(channels.firstStageShare, at),
      of(channels.fanShare, at),
    ].join(";");
  });
  // One row a person typed into.
  lines[100] = lines[100]?.replace(/;[^;]*;/, ";broken;") ?? "";
  return `Stamp;P1;P2;Q1;Q2;R1;R3\n${lines.join("\n")}\n`;
}

async function dropFile(page: Page, name: string, text: string): Promise<void> {
  const data = await page.evaluateHandle(
    ([fileName, content]) => {
      const transfer = new DataTransfer();
      transfer.items.add(new File([content ?? ""], fileName ?? "", { type: "text/csv" }));
      return transfer;
    },
    [name, text],
  );
  const field = page.getByLabel("Log file");
  await field.dispatchEvent("dragover", { dataTransfer: data });
  await field.dispatchEvent("drop", { dataTransfer: data });
}

test("the office drops a log no one has seen, maps it, reads the cause, signs and plans the next look", async ({
  page,
}) => {
  await signIn(page, TIDEWILLOW_PEOPLE.office.email);
  await page.goto(address("/jobs"));
  await page.getByRole("link", { name: "1", exact: true }).first().click();
  await page.getByRole("link", { name: /^Humidity review/ }).click();
  await expect(page.getByText("No log has been imported yet.")).toBeVisible();
  await dropFile(page, "strange.csv", strangeLog());
  await expect(page.getByText("New headings that do not tell what they are.")).toBeVisible();
  await expect(page.getByRole("region", { name: "First rows of the file" })).toContainText("01.07.2025");
  await page.getByLabel("Logger", { exact: true }).fill("Strange logger");
  const chosen = [
    ["Date and time", "Stamp"],
    ["Indoor temperature", "P1"],
    ["Indoor relative humidity", "P2"],
    ["Outdoor temperature", "Q1"],
    ["Outdoor relative humidity", "Q2"],
    ["First stage or cooling", "R1"],
    ["Fan", "R3"],
  ] as const;
  for (const [label, heading] of chosen)
    await page.getByLabel(label, { exact: true }).selectOption({ label: heading });
  for (const label of ["Indoor temperature", "Outdoor temperature"])
    await page.getByLabel(`Unit of ${label}`).selectOption("°C");
  await page.getByRole("button", { name: "Try on the first rows" }).click();
  await expect(page.getByText(/Dates read as day-month-year; rows 5 min apart/)).toBeVisible();
  await expect(page.getByText(/Row 102, P1: "broken" is not a number/)).toBeVisible();
  await expectAccessible(page);
  // Held back on its way, so that what is on screen meanwhile can be seen.
  let letGo = () => {};
  const held = new Promise<void>((resolve) => {
    letGo = resolve;
  });
  await page.route("**/api/jobs/*/logs", async (route) => {
    await held;
    await route.continue();
  });
  await page.getByRole("button", { name: "Import", exact: true }).click();
  await expect(page.getByRole("progressbar", { name: "Sent" })).toBeVisible();
  await expect(page.getByRole("button", { name: "Cancel" })).toBeVisible();
  letGo();
  await expect(page.getByText(/8,064 rows imported, 1 rows or cells not taken/)).toBeVisible({
    timeout: 30_000,
  });

  const causes = page
    .locator("section", { has: page.getByRole("heading", { name: "Likely causes" }) })
    .last();
  await expect(
    causes.getByRole("heading", { name: /1\. The fan dries the coil back into the house/ }),
  ).toBeVisible();
  await expect(causes.getByText(/For it: the fan runs \d+ % of the time without cooling/)).toBeVisible();
  await expect(causes.getByText(/^Against it:/).first()).toBeVisible();
  await expect(causes.getByText(/Turn the fan off between calls for a week/)).toBeVisible();
  await expectAccessible(page);

  // The four weeks upon each other, then a few of them: chosen by dragging, and by their dates from the keyboard.
  const days = page.getByRole("region", { name: "Days upon each other", exact: true });
  await expect(days.getByText(/Indoor humidity of 28 days: the median is lowest at/)).toBeVisible();
  const chart = page.getByRole("img", { name: "What the house did" });
  // It has left the screen meanwhile.
  await chart.scrollIntoViewIfNeeded();
  const box = await chart.boundingBox();
  if (box === null) throw new Error("The chart has no place.");
  await page.mouse.move(box.x + 0.4 * box.width, box.y + 60);
  await page.mouse.down();
  await page.mouse.move(box.x + 0.6 * box.width, box.y + 60, { steps: 4 });
  await page.mouse.up();
  await expect(days.getByText(/Indoor humidity of [67] days:/)).toBeVisible();
  await page.getByLabel("First day").fill("2025-07-08");
  await page.getByLabel("Last day").fill("2025-07-10");
  await page.getByRole("button", { name: "Show these days" }).press("Enter");
  await expect(days.getByText(/Indoor humidity of 3 days:/)).toBeVisible();
  await page.getByLabel("Day picked out").selectOption({ label: "Wed, Jul 9, 2025" });
  await days.getByText("Show the numbers").click();
  await expect(days.getByRole("columnheader", { name: "Wed, Jul 9, 2025" })).toBeVisible();
  await expectAccessible(page);

  await page.getByLabel("Log reviewed").selectOption({ index: 1 });
  await page.getByLabel("Conclusion", { exact: true }).selectOption({ label: "the promise is not kept" });
  await page.getByLabel(/^Cause, when the house is too humid/).fill("The fan runs between calls.");
  await page.getByLabel(/^Look again on/).fill("2026-12-15");
  await saveStage(page);
  await page.setViewportSize({ width: 390, height: 844 });
  await expectAccessible(page);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(390);
  await page.setViewportSize({ width: 1280, height: 900 });
  await signStage(page, "Dewey Okonjo-Hale");
  await expect(page.getByText(/Revision 1, signed by/)).toBeVisible();

  // The logger's next file is known, and what both hold is not doubled.
  await dropFile(page, "again.csv", strangeLog());
  await expect(
    page.getByText("These headings are known from “Strange logger”; its columns are chosen."),
  ).toBeVisible();
});
