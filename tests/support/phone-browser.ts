import { spawnSync } from "node:child_process";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { type BrowserContext, chromium, expect, type Page } from "@playwright/test";
import { DEMO_PASSWORD } from "../../seed/sign-ins";
import { type RunningApp, startApp } from "./running-app";

/** An application of a test's own on the run's database, so that it can be stopped. */
export async function ownApp(port?: number): Promise<RunningApp> {
  const { DATABASE_URL = "", APP_DATA_DIR = "" } = process.env;
  return startApp({
    databaseUrl: DATABASE_URL,
    dataDir: APP_DATA_DIR,
    ...(port === undefined ? {} : { port }),
  });
}

export type PhoneBrowser = {
  readonly open: () => Promise<BrowserContext>;
  /** Ends the browser as a phone does that runs out of power: signal 9, nothing is closed or written down. */
  readonly killNine: (context: BrowserContext) => Promise<void>;
  readonly throwAway: () => Promise<void>;
};

/** A phone's browser whose memory outlives its being closed. */
export async function phoneBrowser(launch: {
  readonly executablePath?: string;
  readonly args?: readonly string[];
}): Promise<PhoneBrowser> {
  const folder = await mkdtemp(path.join(tmpdir(), "dewledger-phone-"));
  return {
    open: () =>
      chromium.launchPersistentContext(folder, {
        ...(launch.executablePath === undefined ? {} : { executablePath: launch.executablePath }),
        args: [...(launch.args ?? [])],
        viewport: { width: 390, height: 844 },
        timezoneId: "UTC",
        locale: "en-US",
        permissions: ["geolocation"],
        geolocation: { latitude: 29.3, longitude: -94.8 },
      }),
    killNine: async (context) => {
      const closed = new Promise<void>((done) => context.once("close", () => done()));
      const { stdout } = spawnSync("ps", ["-eo", "pid=,args="], { encoding: "utf8" });
      const own = stdout.split("\n").filter((line) => line.includes(`--user-data-dir=${folder}`));
      if (own.length === 0) throw new Error("The phone's browser does not run.");
      for (const line of own) {
        try {
          process.kill(Number.parseInt(line, 10), "SIGKILL");
        } catch {
          // It went with its parent.
        }
      }
      await closed;
    },
    throwAway: () => rm(folder, { recursive: true, force: true }),
  };
}

/** Signs in at an application of the test's own and waits until the phone can do without it. */
export async function signInOnPhone(page: Page, at: string, email: string): Promise<void> {
  await page.goto(`${at}/sign-in`);
  await page.getByLabel("E-mail").fill(email);
  await page.getByLabel("Password").fill(DEMO_PASSWORD);
  await page.getByRole("button", { name: "Sign in" }).click();
  await page.waitForURL(/\/today/);
  await expect(page.getByRole("listitem").first()).toBeVisible();
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
    if (!navigator.serviceWorker.controller)
      await new Promise((done) =>
        navigator.serviceWorker.addEventListener("controllerchange", done, { once: true }),
      );
  });
}
