import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

const root = fileURLToPath(new URL(".", import.meta.url));

/**
 * `unit` needs nothing but Node and ends in seconds: `npm run check`. `long` needs no more, but minutes: whole years,
 * whole PDFs, many repeats; a file joins it by its name, `*.long.test.ts`. `db` starts a real PostgreSQL of its own.
 */
export default defineConfig({
  resolve: { alias: { "@": root } },
  test: {
    env: { TZ: "UTC" },
    // Every core: the default leaves one idle, which on a small machine is half of it.
    maxWorkers: "100%",
    projects: [
      {
        extends: true,
        test: {
          name: "unit",
          include: ["tests/**/*.test.ts", "tests/**/*.test.tsx"],
          exclude: ["tests/db/**", "tests/e2e/**", "tests/bench/**", "**/*.long.test.ts"],
          pool: "threads",
          // Machines are noisy: a slow minute is no defect, a hang is.
          testTimeout: 60_000,
        },
      },
      {
        extends: true,
        test: {
          name: "long",
          include: ["tests/**/*.long.test.ts"],
          exclude: ["tests/db/**", "tests/e2e/**", "tests/bench/**"],
          pool: "threads",
          testTimeout: 300_000,
        },
      },
      {
        extends: true,
        test: {
          name: "db",
          include: ["tests/db/**/*.test.ts"],
          // Each test comes from an address of its own.
          env: { TRUSTED_PROXIES: "1" },
          globalSetup: ["tests/support/database-for-tests.ts"],
          fileParallelism: false,
          testTimeout: 30_000,
          hookTimeout: 120_000,
        },
      },
    ],
  },
});
