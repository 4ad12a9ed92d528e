// `npm test`: all tests on a fresh machine. Installs what is missing, ends with `N passed, N failed`.
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, rmSync } from "node:fs";
import path from "node:path";
import { bin, buildIfStale, prepare, ROOT } from "../../seed/prepare.mjs";

const REPORTS = path.join(ROOT, ".tmp/test-reports");
const steps = [];

prepare();
haveBrowser();
rmSync(REPORTS, { recursive: true, force: true });
mkdirSync(REPORTS, { recursive: true });

step("format and lint", () => command("biome", ["check", "."]));
step("types", () => command("tsc", ["--noEmit"]));
tests(
  "unit, architecture and database tests",
  "vitest",
  ["run", "--reporter=default", "--reporter=json", `--outputFile=${report("vitest")}`],
  vitestCounts,
);
step("build", () => {
  buildIfStale();
  return true;
});
tests("browser tests", "playwright", ["test", "--reporter=list,json"], playwrightCounts, {
  PLAYWRIGHT_JSON_OUTPUT_NAME: report("playwright"),
});

shown(
  "what a phone pays for its page (decides nothing)",
  "tsx",
  ["tests/bench/field-lighthouse.ts"],
  120_000,
);

const sum = (key) => steps.reduce((total, one) => total + one[key], 0);
const [passed, failed] = [sum("passed"), sum("failed")];
console.log(`\n${steps.map((one) => `${one.name}: ${one.passed} passed, ${one.failed} failed`).join("\n")}`);
console.log(`${passed} passed, ${failed} failed`);
process.exit(failed === 0 ? 0 : 1);

/** A step that either holds or does not; it counts as one test. */
function step(name, run) {
  console.log(`\n— ${name}`);
  let held = false;
  try {
    held = run();
  } catch (error) {
    console.error(error.message);
  }
  steps.push({ name, passed: held ? 1 : 0, failed: held ? 0 : 1 });
}

/** A test runner. One that ends badly without naming a failed test counts as one failure. */
function tests(name, runner, args, counts, env = {}) {
  console.log(`\n— ${name}`);
  const ended = command(runner, args, env);
  const found = existsSync(report(runner))
    ? counts(JSON.parse(readFileSync(report(runner), "utf8")))
    : { passed: 0, failed: 1 };
  steps.push({ name, passed: found.passed, failed: !ended && found.failed === 0 ? 1 : found.failed });
}

/** A report in the log that fails nothing: what it needs may not be there. */
function shown(name, runner, args, timeout) {
  console.log(`\n— ${name}`);
  const ended = spawnSync(bin(runner), args, { cwd: ROOT, stdio: "inherit", timeout });
  if (ended.status !== 0) console.log("It could not be made here.");
}

function command(name, args, env = {}) {
  const result = spawnSync(bin(name), args, {
    cwd: ROOT,
    stdio: "inherit",
    env: { ...process.env, TZ: "UTC", ...env },
  });
  return result.status === 0;
}

function report(runner) {
  return path.join(REPORTS, `${runner}.json`);
}

function vitestCounts({ numPassedTests, numFailedTests, testResults }) {
  // A file that cannot even be loaded has no tests; it is one failure.
  const broken = testResults.filter(
    (file) => file.status === "failed" && file.assertionResults.length === 0,
  ).length;
  return { passed: numPassedTests, failed: numFailedTests + broken };
}

function playwrightCounts({ stats, errors }) {
  return { passed: stats.expected, failed: stats.unexpected + stats.flaky + errors.length };
}

/** The browser of the system; where it is missing and may be installed, it is. */
function haveBrowser() {
  if (existsSync("/usr/bin/chromium") || process.env.CHROMIUM_PATH) return;
  const mayInstall = process.getuid?.() === 0 && spawnSync("apt-get", ["--version"]).status === 0;
  if (!mayInstall)
    throw new Error("Browser tests need Chromium: install the package chromium, or set CHROMIUM_PATH.");
  const install = (args) =>
    spawnSync("apt-get", args, {
      stdio: "inherit",
      env: { ...process.env, DEBIAN_FRONTEND: "noninteractive" },
    });
  install(["update", "-qq"]);
  install([
    "install",
    "-y",
    "-qq",
    "--no-install-recommends",
    "chromium",
    "poppler-utils",
    "fonts-liberation",
  ]);
}
