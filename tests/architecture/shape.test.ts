import { describe, expect, test } from "vitest";
import { sourceFiles } from "./source-files";

const MAX_LINES = 200;
const MAX_PAGE_LINES = 80;

const files = sourceFiles("app", "lib", "components");

describe("the shape of the code", () => {
  test(`a file has at most ${MAX_LINES} lines, or says at its top why not`, () => {
    const long = files
      .filter((file) => file.text.split("\n").length > MAX_LINES + 1)
      .filter((file) => !/Longer than usual because/.test(file.text.slice(0, 1_500)))
      .map((file) => `${file.path}: ${file.text.split("\n").length}`);
    expect(long).toEqual([]);
  });

  test(`a page has at most ${MAX_PAGE_LINES} lines`, () => {
    const long = files
      .filter((file) => /^app\/.*\/page\.tsx$/.test(file.path))
      .filter((file) => file.text.split("\n").length > MAX_PAGE_LINES + 1)
      .map((file) => `${file.path}: ${file.text.split("\n").length}`);
    expect(long).toEqual([]);
  });

  test("no folder is a drawer for anything", () => {
    const drawers = files.filter((file) =>
      /(^|\/)(utils?|helpers?|misc|common|scripts|src)\//.test(file.path),
    );
    expect(drawers.map((file) => file.path)).toEqual([]);
  });

  test("names are kebab-case", () => {
    const odd = files
      .map((file) => file.path)
      .filter((path) => path.startsWith("lib/") || path.startsWith("components/"))
      .filter((path) => !/^[a-z0-9-]+(\/[a-z0-9-]+)*(\.d)?\.tsx?$/.test(path));
    expect(odd).toEqual([]);
  });

  test("a default export only where the framework asks for one", () => {
    const wrong = files.filter(
      (file) => /^export default /m.test(file.text) && !file.path.startsWith("app/"),
    );
    expect(wrong.map((file) => file.path)).toEqual([]);
  });
});
