import { spawnSync } from "node:child_process";
import { AxeBuilder } from "@axe-core/playwright";
import { expect, type Page } from "@playwright/test";
import { DEMO_PASSWORD } from "../../seed/sign-ins";

/** The address of the application under test. */
export function address(path: string): string {
  return `${process.env.APP_ADDRESS}${path}`;
}

export async function signIn(page: Page, email: string): Promise<void> {
  await page.context().clearCookies();
  await page.goto(address("/sign-in"));
  await page.getByLabel("E-mail").fill(email);
  await page.getByLabel("Password").fill(DEMO_PASSWORD);
  await page.getByRole("button", { name: "Sign in" }).click();
  await page.waitForURL((url) => !url.pathname.startsWith("/sign-in"));
}

/** Fills a stage form by field name: text for numbers and texts, a label for choices, yes or no for questions. */
export async function fillStage(page: Page, values: Readonly<Record<string, string>>): Promise<void> {
  for (const [name, value] of Object.entries(values)) {
    const field = page.locator(`:is(input, select, textarea)[name="${name}"]`).first();
    const kind = await field.evaluate((element) =>
      element instanceof HTMLSelectElement ? "select" : element.getAttribute("type"),
    );
    if (kind === "select") await field.selectOption({ label: value });
    else if (kind === "radio")
      await page.locator(`[name="${name}"][value="${value}"]`).check({ force: true });
    else await field.fill(value);
  }
}

export async function saveStage(page: Page): Promise<void> {
  await page.getByRole("button", { name: "Save", exact: true }).click();
  await expect(page.getByText(/^Saved/).first()).toBeVisible();
}

export async function signStage(page: Page, name: string): Promise<void> {
  await page.getByLabel("Name of the signer").fill(name);
  await page.getByRole("button", { name: "Sign", exact: true }).click();
  await expect(page.getByText("Signed", { exact: true }).first()).toBeVisible();
}

/** No barrier that the checker knows of (WCAG 2.2 AA). */
export async function expectAccessible(page: Page): Promise<void> {
  const found = await new AxeBuilder({ page })
    .withTags(["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"])
    .analyze();
  expect(
    found.violations.map(
      ({ id, nodes }) => `${id}: ${nodes.map((node) => node.target.join(" ")).join(", ")}`,
    ),
  ).toEqual([]);
}

/** The text of a PDF as a reader's search would find it. */
export function textOfPdf(bytes: Buffer): string {
  const result = spawnSync("pdftotext", ["-layout", "-", "-"], {
    input: bytes,
    encoding: "utf8",
    maxBuffer: 16 * 1024 * 1024,
  });
  if (result.status !== 0) throw new Error(`pdftotext failed: ${result.stderr}`);
  return result.stdout;
}
