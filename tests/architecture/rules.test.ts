import { existsSync, readdirSync } from "node:fs";
import path from "node:path";
import { describe, expect, test } from "vitest";
import { isLimitKey, LIMIT_KEYS } from "@/lib/domain/limits";
import { chapterFolderOf, RULE_BOOK } from "@/lib/domain/rule-book";
import type { Rule } from "@/lib/engineering/findings";
import { collectTestSources, sourcesNamedIn } from "../support/test-sources";
import { sourceFiles } from "./source-files";

const ROOT = path.resolve(import.meta.dirname, "../..");
const folders = readdirSync(path.join(ROOT, "lib/engineering"), { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map((entry) => entry.name);
const holding = (file: string) =>
  folders.filter((folder) => existsSync(path.join(ROOT, "lib/engineering", folder, file))).sort();
/** Rules that need a whole job live where the job is evaluated. */
const EVALUATE = "lib/domain/evaluate";
const rules = RULE_BOOK.flatMap((chapter) => chapter.rules);
const sources = collectTestSources();

describe("the rule book", () => {
  test("holds every engineering folder that has rules", () => {
    const chapters = RULE_BOOK.map((chapter) => chapter.folder);
    expect(holding("rules.ts").filter((folder) => !chapters.includes(folder))).toEqual([]);
  });

  test("holds every rule that is declared, and no other", async () => {
    const files = [
      ...holding("rules.ts").map((folder) => `lib/engineering/${folder}/rules.ts`),
      ...readdirSync(path.join(ROOT, EVALUATE)).map((name) => `${EVALUATE}/${name}`),
    ];
    // A set: a table may be passed on by its folder's index.
    const declared = new Set<Rule>();
    // One after the other: modules that import each other are not to be loaded from two ends at once.
    for (const file of files) for (const rule of await rulesOf(file)) declared.add(rule);
    expect(rules.map((rule) => rule.id).sort()).toEqual([...declared].map((rule) => rule.id).sort());
    expect(rules.filter((rule) => !declared.has(rule))).toEqual([]);
  });

  test("ids are unique, begin with their folder and can stand in an address", () => {
    const ids = rules.map((rule) => rule.id);
    expect(ids.filter((id, at) => ids.indexOf(id) !== at)).toEqual([]);
    for (const { folder, rules: own } of RULE_BOOK) {
      for (const { id } of own) {
        expect(chapterFolderOf(id), id).toBe(folder);
        expect(id).toMatch(/^[a-z]+\.[a-z0-9-]+$/);
      }
    }
  });

  test("a rule that rests on a habit of the trade claims no more certainty than that", () => {
    const claiming = rules.filter(
      ({ basis }) => basis.kind === "common practice, no source" && basis.certainty !== "practice",
    );
    expect(claiming.map((rule) => rule.id)).toEqual([]);
  });

  test("every rule is checked by a test that names its source", () => {
    const unchecked = rules.filter((rule) => (sources[rule.checkedBy] ?? []).length === 0);
    expect(unchecked.map((rule) => `${rule.id}: ${rule.checkedBy}`)).toEqual([]);
  });
});

describe("the limits of a company", () => {
  test("hold every limit that is declared, and no key twice", async () => {
    const files = [
      ...holding("limits.ts").map((folder) => `lib/engineering/${folder}/limits.ts`),
      ...readdirSync(path.join(ROOT, EVALUATE)).map((name) => `${EVALUATE}/${name}`),
    ];
    const declared: string[] = [];
    for (const file of files) {
      for (const table of await tablesOf(file, /^[a-z]+Limits$/)) declared.push(...Object.keys(table));
    }
    expect(declared.sort()).toEqual([...LIMIT_KEYS].sort());
  });

  test("belong to a chapter of the rule book", () => {
    const chapters = RULE_BOOK.map((chapter) => chapter.folder);
    expect(LIMIT_KEYS.filter((key) => !chapters.includes(chapterFolderOf(key)))).toEqual([]);
  });

  test("every limit a rule names exists", () => {
    const unknown = rules.flatMap((rule) =>
      rule.limits.filter((key) => !isLimitKey(key)).map((key) => `${rule.id} reads ${key}`),
    );
    expect(unknown).toEqual([]);
  });

  test("every limit is read somewhere", () => {
    const readers = sourceFiles("lib/engineering", "lib/domain").filter(
      (file) => !/limits\.ts$/.test(file.path),
    );
    const unread = LIMIT_KEYS.filter((key) => !readers.some((file) => file.text.includes(`["${key}"]`)));
    expect(unread).toEqual([]);
  });
});

describe("reading the sources a test names", () => {
  test("takes plain text, joined text and several constants", () => {
    const text = `const SOURCE = "one";\nconst FAN_SOURCE =\n  "two " + \`and more\`;\nconst OTHER = "no";`;
    expect(sourcesNamedIn("a.test.ts", text)).toEqual(["one", "two and more"]);
  });

  test("refuses a source that is computed", () => {
    expect(() => sourcesNamedIn("a.test.ts", "const SOURCE = made();")).toThrow(/a\.test\.ts: SOURCE/);
  });
});

async function tablesOf(file: string, name: RegExp): Promise<readonly Record<string, unknown>[]> {
  const exported: Record<string, Record<string, unknown>> = await import(path.join(ROOT, file));
  return Object.entries(exported)
    .filter(([key]) => name.test(key))
    .map(([, table]) => table);
}

async function rulesOf(file: string): Promise<readonly Rule[]> {
  const tables = await tablesOf(file, /^[a-z]+Rules$/);
  return tables.flatMap((table) => Object.values(table) as Rule[]);
}
