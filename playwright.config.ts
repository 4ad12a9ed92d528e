import { defineConfig } from "@playwright/test";

/** One file a user journey, in the system's Chromium, against the built application on a database of its own. */
export default defineConfig({
  testDir: "tests/e2e",
  globalSetup: "./tests/support/app-for-browser.ts",
  outputDir: ".tmp/browser-tests",
  // Journeys change the demo's jobs, so they run one after the other.
  workers: 1,
  timeout: 120_000,
  expect: { timeout: 15_000 },
  use: {
    browserName: "chromium",
    launchOptions: {
      executablePath: process.env.CHROMIUM_PATH ?? "/usr/bin/chromium",
      args: [
        "--no-sandbox",
        "--disable-gpu",
        "--disable-quic",
        "--no-first-run",
        "--disable-background-networking",
        "--disable-component-update",
        "--disable-sync",
      ],
    },
    viewport: { width: 1280, height: 900 },
    trace: "retain-on-failure",
    timezoneId: "UTC",
    locale: "en-US",
  },
});
