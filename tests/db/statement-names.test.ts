import { expect, test } from "vitest";
import { statementNames } from "@/lib/db/statement-names";

test("a statement gets a name when it has come five times, and keeps it; another gets another", () => {
  const nameOf = statementNames(10);
  const asked = (sql: string) => Array.from({ length: 6 }, () => nameOf({ sql }));
  expect(asked("SELECT 1").map((name) => name !== "")).toEqual([false, false, false, false, true, true]);
  const first = nameOf({ sql: "SELECT 1" });
  expect(asked("SELECT 2").at(-1)).not.toBe(first);
  expect(nameOf({ sql: "SELECT 1" })).toBe(first);
});

test("beyond the most names a statement stays nameless, however often it comes", () => {
  const nameOf = statementNames(2);
  for (const sql of ["a", "b", "c"]) for (let time = 0; time < 9; time++) nameOf({ sql });
  expect(["a", "b", "c"].map((sql) => nameOf({ sql }) !== "")).toEqual([true, true, false]);
});

test("texts of a thousand lengths that come once each take no name from those that come often", () => {
  const nameOf = statementNames(1);
  for (let length = 0; length < 1_000; length++) expect(nameOf({ sql: `IN ${length}` })).toBe("");
  for (let time = 0; time < 4; time++) expect(nameOf({ sql: "often" })).toBe("");
  expect(nameOf({ sql: "often" })).not.toBe("");
});
