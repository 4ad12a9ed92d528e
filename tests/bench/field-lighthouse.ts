/**
 * `npm run lighthouse`: what a phone pays for the field page, as a report that never fails: four times slower processor, slow 4G,
 * signed in, on a database of its own with the demo in it. Says the numbers and writes the whole report beside them.
 */
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { buildIfStale } from "../../seed/prepare.mjs";
import { DEMO_PASSWORD, TIDEWILLOW_PEOPLE } from "../../seed/sign-ins";
import setup from "../support/app-for-browser";
import { signInOverHttp } from "../support/http-client";

const folder = path.resolve(import.meta.dirname, "../../.tmp/lighthouse");
buildIfStale();
const stop = await setup();
try {
  const address = process.env.APP_ADDRESS ?? "";
  const cookie = await signInOverHttp(address, TIDEWILLOW_PEOPLE.tech.email, DEMO_PASSWORD);
  mkdirSync(folder, { recursive: true });
  // Fetched for this run only: it is larger than everything else the tests need.
  const asked = [
    ...["--yes", "lighthouse@12.8.2", `${address}/today`, "--quiet"],
    "--chrome-flags=--headless=new --no-sandbox --disable-gpu",
    ...["--only-categories=performance,accessibility,best-practices", "--form-factor=mobile"],
    // As the tool simulates slow 4G and a processor four times slower.
    ...["--throttling-method=simulate", "--throttling.cpuSlowdownMultiplier=4"],
    ...["--throttling.rttMs=150", "--throttling.throughputKbps=1638.4"],
    `--extra-headers=${JSON.stringify({ cookie })}`,
    ...["--output=html", "--output=json", `--output-path=${path.join(folder, "field")}`],
  ];
  const ran = spawnSync("npx", asked, {
    ...{ stdio: "inherit", timeout: 240_000 },
    env: { ...process.env, CHROME_PATH: process.env.CHROMIUM_PATH ?? "/usr/bin/chromium" },
  });
  const json = path.join(folder, "field.report.json");
  if (ran.status !== 0 || !existsSync(json)) throw new Error("Lighthouse gave no report.");
  print(JSON.parse(readFileSync(json, "utf8")));
} finally {
  await stop();
}

type Report = {
  readonly finalDisplayedUrl: string;
  readonly audits: Readonly<Record<string, { readonly numericValue?: number } | undefined>>;
  readonly categories: Readonly<Record<string, { readonly title: string; readonly score: number | null }>>;
};

function print({ finalDisplayedUrl, audits, categories }: Report): void {
  const seconds = (id: string) => `${((audits[id]?.numericValue ?? Number.NaN) / 1_000).toFixed(2)} s`;
  console.log(`page                      ${finalDisplayedUrl}`);
  console.log(`first paint with content  ${seconds("first-contentful-paint")}   (aim: under 1.20 s)`);
  console.log(`largest paint             ${seconds("largest-contentful-paint")}`);
  console.log(`blocked by script         ${seconds("total-blocking-time")}`);
  for (const { title, score } of Object.values(categories))
    console.log(`${title.padEnd(25)} ${score === null ? "no score" : Math.round(score * 100)}`);
  console.log(`whole report: ${path.relative(process.cwd(), path.join(folder, "field.report.html"))}`);
}
