import { expect, type Page, test } from "@playwright/test";
import { TIDEWILLOW_PEOPLE } from "../../seed/sign-ins";
import { address, expectAccessible, fillStage, saveStage, signIn } from "../support/journey";

const { office, tech } = TIDEWILLOW_PEOPLE;

/** Invented rows; total and sensible Btu/h by wet bulb, the same at every outdoor temperature and airflow. */
const INVENTED = [
  { setting: "2.5 tons", at59: ["26,700", "23,200"], at67: ["30,700", "20,600"] },
  { setting: "3.5 tons", at59: ["38,000", "31,000"], at67: ["43,000", "27,500"] },
] as const;
const HEAD = "Setting\tOutdoor DB °F\tEWB °F\tEDB °F\tAirflow cfm\tTotal Btu/h\tSensible Btu/h";
const PERFORMANCE = [
  HEAD,
  ...INVENTED.flatMap(({ setting, at59, at67 }) =>
    [85, 105].flatMap((outdoor) =>
      ["800", "1,200"].flatMap((cfm) => [
        [setting, outdoor, 59, 75, cfm, ...at59].join("\t"),
        [setting, outdoor, 67, 75, cfm, ...at67].join("\t"),
      ]),
    ),
  ),
].join("\n");
/** The last total is missing, the first sensible stands above its total. */
const WITH_FAULTS = PERFORMANCE.replace(/43,000\t27,500$/, "\t27,500").replace(
  "26,700\t23,200",
  "26,700\t32,200",
);
const FAN =
  "Tap\tESP in. w.c.\tCFM\nA\t0.1\t1,050\nA\t0.5\t1,000\nA\t0.9\t950\nB\t0.1\t800\nB\t0.5\t820\nB\t0.9\t700\n";

async function openJob(
  page: Page,
  name: string,
  load: { sensible: string; latent: string },
): Promise<string> {
  await page.goto(address("/jobs/new"));
  await page.getByLabel("Customer name").fill(name);
  await page.getByLabel("Street address").fill("4 Catalog Row");
  await page.getByLabel("City").fill("Heronport");
  await page.getByLabel("State").fill("TX");
  await page.getByLabel("ZIP code").fill("77000");
  await page.getByLabel("Elevation").fill("30 ft");
  await page.getByRole("button", { name: "Open the job" }).click();
  await page.waitForURL(/\/jobs\/[0-9a-f-]{36}$/);
  const job = new URL(page.url()).pathname;
  await page.goto(address(`${job}/load-summary`));
  await fillStage(page, {
    loadSource: "Worksheet of a test",
    sensibleCoolingBtuh: load.sensible,
    latentCoolingBtuh: load.latent,
    heatingBtuh: "29000",
    indoorCoolingDbF: "75",
    indoorCoolingRhPct: "50",
    outdoorCoolingDbF: "94",
    outdoorCoolingWbF: "77",
    humidityLimitPct: "55",
  });
  await saveStage(page);
  return job;
}

/** Clean at both widths of the design desk. */
async function expectClean(page: Page): Promise<void> {
  for (const width of [390, 1280]) {
    await page.setViewportSize({ width, height: 900 });
    await expectAccessible(page);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
  }
}

test("paste a maker's table and pick a smaller capacity setting because the map shows it", async ({
  page,
}) => {
  await signIn(page, office.email);
  await page.goto(address("/catalog"));
  await expectClean(page);
  await page.getByRole("link", { name: "New equipment" }).click();
  await page.getByLabel("Maker", { exact: true }).fill("Fernwick Demo Works");
  await page.getByLabel("Name", { exact: true }).fill("Fernwick 42");
  await page.locator("#field-compressorKind").selectOption("single_speed");
  await page.locator("#field-nominalTons").fill("3.5 tons");
  await page.locator("#field-ratedAirflowCfm").fill("1,000 cfm");
  await page.getByLabel("Refrigerant", { exact: true }).fill("R-410A");
  await page.getByRole("button", { name: "Add a capacity setting" }).click();
  for (const [index, { setting }] of INVENTED.entries()) {
    await page.locator(`[id="field-capacitySettings.${index}.name"]`).fill(setting);
    await page.locator(`[id="field-capacitySettings.${index}.tons"]`).fill(setting);
  }
  await expectClean(page);
  await page.getByRole("button", { name: "Add model" }).click();
  await page.getByRole("link", { name: "Paste or drop a table" }).click();
  await page.getByLabel("Paste the table with its headings").fill(WITH_FAULTS);
  await expect(page.getByRole("heading", { name: "14 of 16 rows can be kept" })).toBeVisible();
  await expect(page.getByText(/Sensible 32,200 Btu\/h is above the total of 26,700 Btu\/h/)).toBeVisible();
  await expect(page.getByText(/Total capacity is empty/)).toBeVisible();
  await expectClean(page);
  await page.getByLabel("Sensible capacity, line 2").fill("23,200");
  await page.getByLabel("Total capacity, line 17").fill("43,000");
  await page.getByLabel("Total capacity, line 17").blur();
  await page.getByRole("button", { name: "Import 16 of 16 rows into the performance table" }).click();
  await expect(page.getByText("16 rows kept, 0 not kept.")).toBeVisible();
  await page.getByText("Fan table", { exact: true }).click();
  await page.getByLabel("Paste the table with its headings").fill(FAN);
  await expect(page.getByText(/820 cfm at 0.5 in. w.c. is more than 800 cfm at 0.1 in. w.c./)).toBeVisible();
  await page.getByRole("button", { name: "Import 5 of 6 rows into the fan table" }).click();
  await expect(page.getByText("5 rows kept, 1 not kept.")).toBeVisible();
  await page.getByRole("button", { name: "Undo the import" }).click();
  await expect(page.getByText("Taken back: the model is as it was.")).toBeVisible();
  await page.getByLabel("Airflow, line 6").fill("760");
  await page.getByLabel("Airflow, line 6").blur();
  await page.getByRole("button", { name: "Import 6 of 6 rows into the fan table" }).click();
  await expect(page.getByText("6 rows kept, 0 not kept.")).toBeVisible();
  await page.getByRole("link", { name: "See the model" }).click();
  await expect(page.getByRole("heading", { name: "Versions" })).toBeVisible();
  await expectClean(page);

  const job = await openJob(page, "Capacity Demo", { sensible: "21600", latent: "6200" });
  await page.goto(address(`${job}/equipment-selection`));
  await page
    .locator("#field-equipmentModelId")
    .selectOption({ label: "Fernwick Demo Works Fernwick 42, 3.5 ton" });
  await expect(page.locator("#field-capacitySetting option")).toHaveCount(3);
  await fillStage(page, { capacitySetting: "3.5 tons" });
  await saveStage(page);
  await page.goto(address(`${job}/airflow-setup`));
  await fillStage(page, { secondStageAirflowSetting: "A", designExternalStaticInWc: "0.5" });
  await saveStage(page);
  await page.goto(address(`${job}/equipment-selection`));
  const line = page.getByRole("region", { name: "Capacity map" }).getByRole("row", { name: /^A / });
  // By hand at 62.6 °F wet bulb: 40,250 Btu/h is 1.45 of the load of 27,800, 28,500 is 1.03 of it.
  await expect(line.getByRole("cell").nth(1)).toContainText("too big (chosen)");
  await expect(line.getByRole("cell").nth(0)).toContainText("fits");
  await fillStage(page, { capacitySetting: "2.5 tons" });
  await expect(line.getByRole("cell").nth(0)).toContainText("fits (chosen)");
  await saveStage(page);
  await expect(page.getByText(/This job rests on version 4 of Fernwick/)).toBeVisible();
  await expectClean(page);
});

test("see that airflow, not the unit, is what makes it too big", async ({ page }) => {
  await signIn(page, office.email);
  const job = await openJob(page, "Airflow Demo", { sensible: "16000", latent: "3500" });
  await page.goto(address(`${job}/equipment-selection`));
  await page
    .locator("#field-equipmentModelId")
    .selectOption({ label: "Quillhollow Demo Works Quillhollow 36 V, 3 ton (demo data)" });
  await expect(page.locator("#field-capacitySetting option")).toHaveCount(4);
  await fillStage(page, { capacitySetting: "3 tons" });
  await saveStage(page);
  await page.goto(address(`${job}/airflow-setup`));
  await fillStage(page, {
    secondStageAirflowSetting: "E",
    designExternalStaticInWc: "0.5",
    filterDropInWc: "0.12",
    filterLoadedDropInWc: "0.25",
  });
  await expect(
    page.getByText(/On these ducts setting E moves 1,200 cfm against 0.50 in. w.c./).first(),
  ).toBeVisible();
  await saveStage(page);
  await expectClean(page);
  await page.goto(address(`${job}/equipment-selection`));
  const map = page.getByRole("region", { name: "Capacity map" });
  // The same unit at the same capacity setting, the last column: only the airflow differs between the lines.
  const cell = (airflow: string) =>
    map
      .getByRole("row", { name: new RegExp(`^${airflow} `) })
      .getByRole("cell")
      .last();
  await expect(cell("E")).toContainText("too big");
  await expect(map.getByRole("cell").filter({ hasText: "● fits" }).first()).toBeVisible();
  await expectClean(page);
});

test("a tech looks and cannot change", async ({ page }) => {
  await signIn(page, tech.email);
  await page.goto(address("/catalog"));
  await expect(page.getByRole("heading", { name: "Catalog" })).toBeVisible();
  await expect(page.getByRole("link", { name: "New equipment" })).toBeHidden();
  const refused = await page.goto(address("/catalog/new"));
  expect(refused?.status()).toBe(404);
});
