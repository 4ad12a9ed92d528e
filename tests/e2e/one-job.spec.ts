import { expect, test } from "@playwright/test";
import { TIDEWILLOW_PEOPLE } from "../../seed/sign-ins";
import { enter, expectAllSent, openReading, walkReadings } from "../support/field-journey";
import {
  address,
  expectAccessible,
  fillStage,
  saveStage,
  signIn,
  signStage,
  textOfPdf,
} from "../support/journey";

const { office, tech, owner } = TIDEWILLOW_PEOPLE;

// Readings a tech could take; what they must lead to is worked out by hand below.
const AIRFLOW_CFM = "852";

/**
 * Moisture removal worked out by hand with the equations of ASHRAE Fundamentals 2017 ch. 1 at 14.68 psia (30 ft), saturation
 * pressures of water from its table (recalled: 60 °F 0.25635, 65 °F 0.30579, 50 °F 0.17812, 52 °F 0.1917 psia), geometric between.
 * Return 75.6/63.6 °F: Ws = 0.621945·0.29106/14.389 = 0.012581, W = (1057.64·0.012581 − 0.24·12)/1062.97 = 0.009809,
 * v = 0.370486·535.27·1.01577/14.68 = 13.72 ft³/lb. Supply 52.0/51.0 °F: Ws = 0.007929, W = (1064.64·0.007929 − 0.24)/1065.09 = 0.00770.
 * 852·60/13.72·(0.009809 − 0.00770) = 7.86 lb/h; reading the table between its rows is good to 0.15.
 */
const BY_HAND_LB_PER_H = 7.86;

test("one job from load to review: office manager, tech, owner, packet", async ({ page }) => {
  await signIn(page, office.email);
  await page.getByRole("link", { name: "New job" }).click();
  await page.getByLabel("Customer name").fill("Perpetua Vance-Ochoa");
  await page.getByLabel("Street address").fill("9 Journey Lane");
  await page.getByLabel("City").fill("Heronport");
  await page.getByLabel("State").fill("TX");
  await page.getByLabel("ZIP code").fill("77000");
  await page.getByLabel("Elevation").fill("30 ft");
  await page.getByLabel("Weather file").selectOption({ index: 1 });
  await page.getByLabel("Startup", { exact: false }).first().fill("2026-12-01");
  await page.getByLabel(tech.name).check();
  await expectAccessible(page);
  await page.getByRole("button", { name: "Open the job" }).click();
  await page.waitForURL(/\/jobs\/[0-9a-f-]{36}$/);
  const job = new URL(page.url()).pathname;

  await page.goto(address(`${job}/load-summary`));
  await fillStage(page, {
    loadSource: "Room-by-room worksheet of a test",
    sensibleCoolingBtuh: "21,600 Btu/h",
    latentCoolingBtuh: "6200",
    heatingBtuh: "29000",
    indoorCoolingDbF: "75",
    indoorCoolingRhPct: "50",
    indoorHeatingDbF: "70",
    outdoorCoolingDbF: "94",
    outdoorCoolingWbF: "77",
    outdoorHeatingDbF: "31",
    humidityLimitPct: "55",
    floorAreaFt2: "2300",
    bedrooms: "3",
    ventilationCfm: "99",
  });
  // The office sees what follows while typing, before anything is saved: 21,600 / 27,800 = 0.78.
  await expect(page.getByText(/27,800 Btu\/h \(2\.32 tons\), 0\.78 of it sensible/)).toBeVisible();
  await saveStage(page);
  await expectAccessible(page);
  await signStage(page, office.name);

  await page.goto(address(`${job}/equipment-selection`));
  await page
    .locator("#field-equipmentModelId")
    .selectOption({ label: "Quillhollow Demo Works Quillhollow 36 V, 3 ton (demo data)" });
  await expect(page.locator("#field-capacitySetting option")).toHaveCount(4);
  await fillStage(page, { capacitySetting: "2.5 tons", auxiliaryHeatKw: "5", dehumidifierPintsPerDay: "0" });
  await saveStage(page);
  await signStage(page, office.name);

  await page.goto(address(`${job}/airflow-setup`));
  await fillStage(page, {
    firstStageAirflowSetting: "B",
    secondStageAirflowSetting: "C",
    designExternalStaticInWc: '0.5"',
  });
  await saveStage(page);
  await signStage(page, office.name);

  await page.goto(address(`${job}/control-setup`));
  await fillStage(page, {
    coolingSetpointF: "75",
    firstStageStartOffsetF: "1",
    secondStageStartOffsetF: "1",
    minimumCompressorRunMin: "10",
    minimumCompressorRestMin: "5",
    stepBackToFirstStage: "yes",
    coolingPastSetpointF: "0",
    fanRunOnAfterCoolingS: "0",
    fanBetweenCalls: "off",
    colderCoilCooling: "yes",
  });
  const findings = page.getByRole("region", { name: "Findings" });
  await expect(findings.getByRole("heading", { name: /Falls short/ })).toBeVisible();
  await fillStage(page, { secondStageStartOffsetF: "2" });
  await expect(findings.getByRole("heading", { name: /Falls short/ })).toBeHidden();
  await saveStage(page);
  await signStage(page, office.name);

  await signIn(page, tech.email);
  await page.setViewportSize({ width: 390, height: 844 });
  await page.goto(address("/today"));
  await expectAccessible(page);
  await page.getByRole("link", { name: "Perpetua Vance-Ochoa" }).click();
  await expectAccessible(page);
  await page.getByRole("button", { name: "Begin the startup" }).click();
  await walkReadings(page, { refrigerant: "R-454B", outdoorDbF: "91", secondReturnDbF: "75.6" });
  await walkReadings(page, { secondReturnWbF: "76.6" });
  await expect(page.getByText(/wet bulb cannot be above its dry bulb/).first()).toBeVisible();
  await expect(page.locator("#entry-secondReturnWbF")).toHaveValue("76.6");
  await enter(page, "secondReturnWbF", "sixty three point six");
  await expectAccessible(page);
  await walkReadings(page, {
    secondSupplyDbF: "52.0",
    secondSupplyWbF: "51.0",
    secondReturnStaticInWc: "0.22",
    secondSupplyStaticInWc: "0.28",
    secondAirflowCfm: AIRFLOW_CFM,
    secondSuctionPressurePsig: "105",
    secondSuctionLineF: "50",
    secondLiquidPressurePsig: "330",
    secondLiquidLineF: "97",
  });
  await openReading(page, job.slice("/jobs/".length), "secondStabilisedMin");
  await enter(page, "secondStabilisedMin", "20");
  await openReading(page, job.slice("/jobs/".length), "settings");
  await enter(page, "leftCapacitySetting", "2.5 tons");
  await enter(page, "leftSecondStageAirflowSetting", "C");
  await expectAllSent(page);
  await openReading(page, job.slice("/jobs/".length), "finish");
  await expect(page.getByRole("heading", { name: "Will this house be dry?" })).toBeVisible();
  await expectAccessible(page);
  await page.getByLabel("I took these readings on this system").check();
  await page.getByRole("button", { name: "Sign", exact: true }).click();
  await expect(page.getByText(`Signed by ${tech.name}`)).toBeVisible();
  await page.setViewportSize({ width: 1280, height: 900 });

  await signIn(page, office.email);
  await page.goto(address(`${job}/humidity-review`));
  await page.setInputFiles("#field-file", {
    name: "notes.csv",
    mimeType: "text/csv",
    buffer: Buffer.from("<html>sign in</html>"),
  });
  // Looked at in the browser, before anything is sent.
  await expect(page.getByText(/web page/).first()).toBeVisible();
  await page.setInputFiles("#field-file", {
    name: "hall.csv",
    mimeType: "text/csv",
    buffer: Buffer.from(twoDays()),
  });
  await page.getByRole("button", { name: "Import" }).click();
  await expect(page.getByText(/576 rows imported, 0 rows or cells not taken/)).toBeVisible();
  await page.locator("#field-logImportId").selectOption({ index: 1 });
  await fillStage(page, { conclusion: "the promise is kept" });
  await saveStage(page);
  // 432 of 576 five-minute rows are at 52 %, the rest at 58 %: 36 of 48 hours are at or below 55 %.
  await page.goto(address(`${job}/humidity-review`));
  await expect(page.getByText(/36 of 48 logged hours \(75\.0 %\) at or below 55 %/)).toBeVisible();

  await signIn(page, owner.email);
  await page.goto(address(job));
  const ledger = page.getByRole("table", { name: /Ledger of job/ });
  await expect(ledger.getByText(AIRFLOW_CFM).first()).toBeVisible();
  // The fourth cell of the line is "Measured".
  const moisture = (await ledger.locator("#line-moisture td").nth(2).textContent()) ?? "";
  const measured = Number(/([\d.]+)\s*lb\/h/.exec(moisture)?.[1]);
  expect(Math.abs(measured - BY_HAND_LB_PER_H)).toBeLessThan(0.15);
  await expectAccessible(page);

  await page.goto(address(`${job}/packet`));
  await page.getByRole("button", { name: "Make the packet" }).click();
  await expect(page.getByText(/The packet is ready/)).toBeVisible();
  const link = page.getByRole("link", { name: /^Open \(PDF/ });
  const pdf = await page.request.get(address((await link.getAttribute("href")) ?? ""));
  expect(pdf.headers()["content-type"]).toBe("application/pdf");
  const text = textOfPdf(await pdf.body());
  expect(text).toContain("Perpetua Vance-Ochoa");
  expect(text).toMatch(new RegExp(`${AIRFLOW_CFM}\\s+cfm`));
  expect(text).toMatch(new RegExp(`${measured.toFixed(1)}\\s+lb/h`));
});

/** Two days of five-minute rows in the public field-study column style. */
function twoDays(): string {
  const rows = Array.from({ length: 576 }, (_, index) => {
    const at = new Date(Date.UTC(2026, 5, 1) + index * 300_000).toISOString().replace("T", " ").slice(0, 16);
    return `${at},75,75.2,${index % 4 === 3 ? 58 : 52}`;
  });
  return `local_datetime,indoor_set_point_F,thermostat_temp_F,thermostat_RH\n${rows.join("\n")}\n`;
}
