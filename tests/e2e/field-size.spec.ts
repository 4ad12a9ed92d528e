import { readFileSync } from "node:fs";
import path from "node:path";
import { gzipSync } from "node:zlib";
import { expect, test } from "@playwright/test";

const BUILD = path.resolve(import.meta.dirname, "../../.next");
const MOST_BYTES = 170_000;

type RouteStats = { readonly route: string; readonly firstLoadChunkPaths: readonly string[] };

test("the field route sends at most 170 kB of script, compressed, and the engineering comes later", () => {
  const stats: readonly RouteStats[] = JSON.parse(
    readFileSync(path.join(BUILD, "diagnostics/route-bundle-stats.json"), "utf8"),
  );
  const chunks = stats.find((one) => one.route === "/today")?.firstLoadChunkPaths ?? [];
  expect(chunks.length).toBeGreaterThan(3);
  const texts = chunks.map((chunk) => readFileSync(path.resolve(BUILD, "..", chunk), "utf8"));
  const bytes = texts.reduce((sum, text) => sum + gzipSync(text).byteLength, 0);
  expect(bytes).toBeLessThanOrEqual(MOST_BYTES);
  // Not by leaving out the screens' own script, and without the physics, which a reading can be typed without.
  expect(texts.some((text) => text.includes("dewledger-field"))).toBe(true);
  expect(texts.some((text) => text.includes("startup.moisture-removal"))).toBe(false);
});

test("the service worker keeps the page, its scripts, its styles and fonts, and nothing of any company", () => {
  const worker = readFileSync(path.join(BUILD, "server/app/sw/sw.js.body"), "utf8");
  const kept = [...worker.matchAll(/"?url"?:\s*"([^"]+)"/g)].map(([, url]) => url ?? "");
  expect(kept).toContain("/today");
  const ways = kept.map((url) => url.replace(/[^/]+$/, ""));
  expect(new Set(ways)).toEqual(new Set(["/", "/icons/", "/_next/static/chunks/", "/_next/static/media/"]));
  const texts = kept
    .filter((url) => url.endsWith(".js"))
    .map((url) => readFileSync(path.join(BUILD, url.replace("/_next/", "")), "utf8"));
  // Everything that works without a network is there: screens, engineering, sending, the drawing.
  const parts = ["dewledger-field", "startup.moisture-removal", "Will this house be dry?", "External static"];
  for (const part of parts) expect(texts.some((text) => text.includes(part))).toBe(true);
});
