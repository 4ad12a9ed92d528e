import { readFile } from "node:fs/promises";
import { expect, type Page, test } from "@playwright/test";
import { parse } from "csv-parse/sync";
import { address, expectAccessible, signIn } from "../support/journey";

const OFFICE = "office@tidewillow.example";

const numbers = (page: Page) => page.locator("a[data-job]").allTextContents();

test.describe("the jobs table", () => {
  test.beforeEach(({ page }) => signIn(page, OFFICE));

  for (const width of [1280, 390]) {
    test(`sorts and is accessible at ${width} px`, async ({ page }) => {
      await page.setViewportSize({ width, height: 900 });
      await page.goto(address("/jobs"));
      await expectAccessible(page);
      const newestFirst = await numbers(page);
      await page.getByRole("link", { name: "Job", exact: true }).click();
      await expect(page).toHaveURL(/sort=number&way=up/);
      await expect.poll(() => numbers(page)).toEqual(newestFirst.toReversed());
      await expect(page.getByRole("columnheader", { name: "Job", exact: true })).toHaveAttribute(
        "aria-sort",
        "ascending",
      );
      await page.goto(address("/jobs/week"));
      await expectAccessible(page);
    });
  }

  test("by keyboard alone: search, walk, change the date, open", async ({ page }) => {
    await page.goto(address("/jobs"));
    await page.keyboard.press("/");
    await expect(page.getByLabel("Search")).toBeFocused();
    const [first = ""] = await numbers(page);
    await page.keyboard.press("Tab");
    await page.locator("a[data-job]").first().focus();
    await page.keyboard.press("ArrowDown");
    await expect(page.locator("a[data-job]").nth(1)).toBeFocused();
    await page.keyboard.press("ArrowUp");
    await page.keyboard.press("e");
    await expect(page.getByLabel(`Tech of job ${first}`)).toBeFocused();
    await page.keyboard.press("Tab");
    await page.keyboard.type("03092027");
    await page.keyboard.press("Enter");
    await expect(page.getByRole("row").nth(1)).toContainText("2027-03-09");
    // The date is shown before it is kept; the row says so until it is.
    await expect(page.getByRole("row").nth(1)).not.toContainText("Saving");
    await page.reload();
    await expect(page.getByRole("row").nth(1)).toContainText("2027-03-09");
    await page.locator("a[data-job]").first().focus();
    await page.keyboard.press("Enter");
    await page.waitForURL(/\/jobs\/[0-9a-f-]{36}$/);
  });

  test("a plan changed elsewhere meanwhile is not overwritten, and says so", async ({ page, context }) => {
    await page.goto(address("/jobs"));
    const other = await context.newPage();
    await other.goto(address("/jobs"));
    const change = (one: Page) => one.locator("button[data-plan]").nth(2);
    await change(page).click();
    await change(other).click();
    await other.locator('input[name="startup"]').fill("2027-04-01");
    await other.getByRole("button", { name: "Save", exact: true }).click();
    await expect(other.getByRole("row").nth(3)).toContainText("2027-04-01");
    await page.locator('input[name="startup"]').fill("2027-05-01");
    await page.getByRole("button", { name: "Save", exact: true }).click();
    await expect(page.getByText("Someone else changed this job just now")).toBeVisible();
    await expect(page.getByRole("row").nth(3)).not.toContainText("2027-05-01");
  });

  test("a view is kept, and its file holds the same jobs", async ({ page }) => {
    await page.goto(address("/jobs?sort=customer&columns=customer%2Creview"));
    await page.getByText("Save this view").click();
    await page.getByLabel("Name of the view").fill("By customer");
    await page.getByRole("button", { name: "Save the view" }).click();
    await expect(page.getByRole("link", { name: "By customer" })).toBeVisible();
    await page.goto(address("/jobs"));
    await page.getByRole("link", { name: "By customer" }).click();
    await expect(page).toHaveURL(/sort=customer/);
    await expect(page.getByRole("columnheader", { name: "Humidity review" })).toBeVisible();
    await expect(page.getByRole("columnheader", { name: "Verdict" })).toHaveCount(0);
    const shown = await numbers(page);
    const [download] = await Promise.all([
      page.waitForEvent("download"),
      page.getByRole("link", { name: "All jobs of this view as CSV" }).click(),
    ]);
    const rows: string[][] = parse(await readFile(await download.path()), { bom: true });
    expect(rows.slice(1, 1 + shown.length).map((row) => row[0])).toEqual(shown);
    await page.getByRole("button", { name: "Remove the view By customer" }).click();
    await expect(page.getByRole("link", { name: "By customer" })).toHaveCount(0);
  });

  test("the week: a job moves by its list and by keyboard", async ({ page }) => {
    await page.goto(address("/jobs"));
    const change = page.locator("button[data-plan]").nth(1);
    const job = (await numbers(page))[1] ?? "";
    await change.click();
    await page.locator('input[name="startup"]').fill("2027-06-09");
    await page.getByRole("button", { name: "Save", exact: true }).click();
    await expect(page.getByRole("row").nth(2)).toContainText("2027-06-09");
    await expect(page.getByRole("row").nth(2)).not.toContainText("Saving");
    await page.goto(address("/jobs/week?from=2027-06-09"));
    const column = (day: number) => page.locator(`tbody td:nth-child(${day + 1})`);
    const link = `a[data-week-job="${job}"]`;
    // 9 June 2027 is a Wednesday.
    await expect(column(3).locator(link).first()).toBeVisible();
    await page.getByLabel(`Move job ${job}`).first().selectOption("day:2027-06-11");
    await expect(column(5).locator(link).first()).toBeVisible();
    // The next move begins from what the server has.
    await expect(page.getByText("Saving…")).toHaveCount(0);
    await page.locator(link).first().focus();
    await page.keyboard.press("Alt+ArrowLeft");
    await expect(column(4).locator(link).first()).toBeVisible();
    await expect(page.getByText("Saving…")).toHaveCount(0);
  });

  test("the week: a job stands in its new cell before the server answers, and goes back when that fails", async ({
    page,
  }) => {
    await page.goto(address("/jobs"));
    const job = (await numbers(page))[2] ?? "";
    await page.locator("button[data-plan]").nth(2).click();
    await page.locator('input[name="startup"]').fill("2027-07-07");
    await page.getByRole("button", { name: "Save", exact: true }).click();
    await expect(page.getByRole("row").nth(3)).toContainText("2027-07-07");
    await expect(page.getByRole("row").nth(3)).not.toContainText("Saving");
    await page.goto(address("/jobs/week?from=2027-07-07"));
    const column = (day: number) => page.locator(`tbody td:nth-child(${day + 1})`);
    const link = `a[data-week-job="${job}"]`;
    await expect(column(3).locator(link).first()).toBeVisible();
    // The server's answer waits until it is let go, and then is no answer.
    let letGo: () => void = () => undefined;
    const held = new Promise<void>((resolve) => {
      letGo = resolve;
    });
    await page.route("**/jobs/week**", async (route) => {
      if (route.request().method() !== "POST") return route.continue();
      await held;
      await route.abort("connectionreset");
    });
    await page.locator(link).first().focus();
    await page.keyboard.press("Alt+ArrowRight");
    await expect(column(4).locator(link).first()).toBeVisible();
    await expect(column(4).getByText("Saving…").first()).toBeVisible();
    letGo();
    await expect(column(3).locator(link).first()).toBeVisible();
    await expect(column(3).getByRole("alert")).toContainText("Not moved. No connection to the server.");
  });
});

test("an owner sees which jobs a limit would change, saves it, and the background work is done", async ({
  page,
}) => {
  await signIn(page, "owner@tidewillow.example");
  await page.goto(address("/rules"));
  await page.getByRole("button", { name: "Change: Indoor design temperature, cooling" }).click();
  await page.getByLabel("New value").fill("78");
  await page.getByRole("button", { name: "Show which jobs change" }).click();
  await expect(page.getByText(/would change, of \d+ looked at/)).toBeVisible();
  await page.getByLabel("Reason").fill("We design warmer");
  await page.getByRole("button", { name: "Change", exact: true }).click();
  await expect(page.getByRole("dialog")).toHaveCount(0);
  const done = async (count: number) => {
    await page.goto(address("/company/work"));
    await expect(page.getByText(/jobs judged, /)).toHaveCount(count, { timeout: 20_000 });
  };
  await done(1);
  await expectAccessible(page);
  // Back to the seed value: the other journeys share this company.
  await page.goto(address("/rules"));
  const limit = page.locator('[id="limit-load.indoorCoolingDb"]');
  await limit.getByText(/^Changed by /).click();
  await expect(limit.getByText("Reason: We design warmer").first()).toBeVisible();
  await expectAccessible(page);
  await page.getByRole("button", { name: "Change: Indoor design temperature, cooling" }).click();
  await page.getByRole("button", { name: /^Show it for the seed value/ }).click();
  await expect(page.getByText(/would change, of \d+ looked at/)).toBeVisible();
  await page.getByLabel("Reason").fill("Only tried");
  await page.getByRole("button", { name: /^Go back to/ }).click();
  await expect(page.getByRole("dialog")).toHaveCount(0);
  await done(2);
});
