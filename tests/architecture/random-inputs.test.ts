import { readdirSync } from "node:fs";
import path from "node:path";
import { expect, test } from "vitest";
import { engineeringFunctions } from "./engineering-functions";
import { projectFile } from "./source-files";

/*
 * That every public function meets random inputs is checked where they run: `everyFunctionTried` reads the folder's index and fails
 * for a function without calls. Here: no folder is without such a test, and each hands over its whole index.
 */
const folders = readdirSync(path.resolve(import.meta.dirname, "../../lib/engineering"), {
  withFileTypes: true,
})
  .filter((entry) => entry.isDirectory())
  .map((entry) => entry.name);

test("there are folders to look at, each with public functions", () => {
  expect(folders.length).toBeGreaterThan(7);
  const without = folders.filter(
    (folder) =>
      !engineeringFunctions().some(
        (one) => one.isPublic && one.file.startsWith(`lib/engineering/${folder}/`),
      ),
  );
  expect(without).toEqual([]);
});

test.each(folders)("%s has a random-inputs test over its whole index", (folder) => {
  const text = projectFile(`tests/engineering/${folder}/random-inputs.test.ts`);
  const whole = new RegExp(`import \\* as (\\w+) from "@/lib/engineering/${folder}";`).exec(text)?.[1];
  expect(whole).toBeDefined();
  expect(text).toContain(`tried(${whole}`);
  expect(text).toContain(`everyFunctionTried("${folder}", ${whole});`);
});
