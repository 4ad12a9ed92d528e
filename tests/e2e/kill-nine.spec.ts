import { expect, test } from "@playwright/test";
import { killNineApp } from "../support/kill-nine-app";

// `npm run soak` does 20 rounds of this.
test("3 times kill -9 of the application or PostgreSQL: every acknowledged save is there, once", async () => {
  test.setTimeout(300_000);
  const report = await killNineApp(3, 3);
  expect(report.faults).toEqual([]);
  expect(report.killedApps).toBeGreaterThan(0);
  expect(report.killedServers).toBeGreaterThan(0);
  expect(report.acknowledged).toBeGreaterThan(9);
});
